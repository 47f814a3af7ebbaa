/**
 * What stands on the right-hand side of a regression, one entry a term, in the order the coefficients come out.
 *
 * - `"rainMm14d"`: a column of numbers, or of true and false counted as 1 and 0.
 * - `{ column, centre, scale | per }`: numbers, moved and rescaled. `centre: true` takes off the mean of the rows used, a number
 *   takes off that number. `per: 10` gives the effect of 10 units; `scale: true` that of one standard deviation (n - 1) of the
 *   rows used, `scale: 4` that of 4 units, the same as `per: 4`. The coefficient is named `column`, `column per 10` or `column per SD`.
 * - `{ column, reference, levels }`: a category held against its reference value; one coefficient for every other value, named
 *   `column: value`, in the order of `levels`, or sorted when `levels` is left out.
 * - `{ product: [a, b] }`: each column of a times each column of b, those of a running fastest; named `a × b`. The terms
 *   themselves are not added: name them too.
 * - `{ season: "visitDate", harmonics }`: the turn of the year as `sin(2πkd / 365.25)` and `cos(2πkd / 365.25)`, d the days since
 *   1970-01-01 and k = 1 .. `harmonics` (1 when left out). The first cosine is 1 within a day of 1 January, the first sine within a
 *   day of 2 April. Named `visitDate: sine`, `visitDate: cosine`, `visitDate: sine 2`, `visitDate: cosine 2`.
 */
export type Term = string | NumberTerm | CategoryTerm | ProductTerm | SeasonTerm;

interface NumberTerm {
  readonly column: string;
  readonly centre?: boolean | number;
  readonly scale?: boolean | number;
  readonly per?: number;
}

interface CategoryTerm {
  readonly column: string;
  readonly reference: string | number | boolean;
  readonly levels?: readonly (string | number | boolean)[];
}

interface ProductTerm {
  readonly product: readonly Term[];
}

interface SeasonTerm {
  readonly season: string;
  readonly harmonics?: 1 | 2;
}
