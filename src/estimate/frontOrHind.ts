import { crossValidatedLogistic, type CrossValidatedLogistic } from "./crossValidatedLogistic.js";
import { requireRows } from "./design/requireRows.js";
import { EstimateError } from "./EstimateError.js";
import { linearDiscriminant, type LinearDiscriminant } from "./linearDiscriminant.js";

/** What every row needs besides the measures named. */
export interface FootRow {
  readonly horseId: string;
  /** null for a specimen of unknown end. */
  readonly end: "fore" | "hind" | null;
  /** null for a specimen: it is judged by the rule, and the rule is not made from it. */
  readonly side: "left" | "right" | null;
}

/** A foot and how its shape speaks. */
export interface FootJudged<Row> {
  /** The row given. */
  readonly foot: Row;
  /** Chance of a front foot by the discriminant; for feet of known side by the rule made without their horse. Null where a measure is missing. */
  readonly probabilityFore: number | null;
}

/** A rule that tells front from hind feet by their shape. */
export interface FrontOrHind<Row> {
  readonly terms: readonly string[];
  /** Feet the rule was made from, and their horses. */
  readonly n: number;
  readonly horses: number;
  readonly discriminant: LinearDiscriminant;
  /** Null when it has no answer; `logisticNote` says why. */
  readonly logistic: CrossValidatedLogistic | null;
  readonly logisticNote: string | null;
  readonly known: readonly FootJudged<Row>[];
  readonly specimens: readonly FootJudged<Row>[];
}

/**
 * Which end is this foot from? A linear discriminant and a logistic regression of the measures named, both tried on horses they have not
 * seen, and what the discriminant says of specimens.
 *
 * Method: rows with a side make the rule, one horse held out at a time; front and hind are taken as equally likely beforehand. A
 * logistic regression has no answer where the two ends can be told without error; the discriminant has. A foot of known side whose own
 * probability is small may bear the wrong label, or may be an odd foot.
 *
 * Missing: a row with a null measure makes no rule and gets no probability.
 *
 * Errors (`EstimateError`): those of `linearDiscriminant`.
 *
 * Source: as in `linearDiscriminant` and `crossValidatedLogistic`.
 */
export function frontOrHind<Row extends FootRow>(
  rows: readonly Row[],
  terms: readonly string[],
  options: { readonly level?: number } = {},
): FrontOrHind<Row> {
  requireRows(rows);
  const sided = rows.filter(({ side }) => side !== null);
  const specimens = rows.filter(({ side }) => side === null);
  const discriminant = linearDiscriminant({
    ...options,
    ...{ rows: sided, label: "end", terms, foldBy: "horseId", priors: { fore: 0.5, hind: 0.5 } },
  });
  const heldOut = new Map(discriminant.rows.map((row) => [row.row, row.heldOut.posterior["fore"] ?? null]));
  const said = discriminant.predict(specimens);
  return {
    ...{ terms, n: discriminant.n, horses: new Set(discriminant.rows.map(({ row }) => sided[row]!.horseId)).size, discriminant },
    ...logisticOf(sided, terms, options),
    known: sided.map((foot, place) => ({ foot, probabilityFore: heldOut.get(place) ?? null })),
    specimens: specimens.map((foot, place) => ({ foot, probabilityFore: said[place]?.posterior["fore"] ?? null })),
  };
}

function logisticOf(
  sided: readonly FootRow[],
  terms: readonly string[],
  options: { readonly level?: number },
): Pick<FrontOrHind<FootRow>, "logistic" | "logisticNote"> {
  const rows = sided.map((row) => ({ ...row, fore: row.end === "fore" }));
  try {
    return {
      logistic: crossValidatedLogistic({ ...options, rows, outcome: "fore", terms, foldBy: "horseId" }),
      logisticNote: null,
    };
  } catch (fault) {
    if (fault instanceof EstimateError) return { logistic: null, logisticNote: fault.message };
    throw fault;
  }
}
