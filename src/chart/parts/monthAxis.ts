/** Position encoding of a run of months, and how many months it spans. */
export interface MonthAxis {
  readonly encoding: Readonly<Record<string, unknown>>;
  readonly months: number;
}

const names = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const mostLabels = 18;
const steps = [1, 2, 3, 6, 12];

/**
 * A month axis over the field `month` (`YYYY-MM`) that keeps a place for the months in between that have no row. Years stand under
 * the first month and under each January. Without `labels` only the ticks are drawn, for a panel above another.
 * @throws RangeError when a month is not written `YYYY-MM`, or when there is none.
 */
export function monthAxis(months: readonly string[], labels: boolean): MonthAxis {
  const numbers = months.map(monthNumber);
  const [first, last] = [Math.min(...numbers), Math.max(...numbers)];
  if (!Number.isFinite(first)) throw new RangeError("A month axis needs at least one month.");
  const run = Array.from({ length: last - first + 1 }, (_, index) => first + index);
  const step = steps.find((each) => run.length / each <= mostLabels) ?? Math.ceil(run.length / mostLabels / 12) * 12;
  const labelled = run.filter((month) => month % step === 0);
  const ticks = (labelled.length === 0 ? run.slice(0, 1) : labelled).map(monthOf);
  const month = `[${names.map((name) => `'${name}'`).join(",")}][+slice(datum.value, 5, 7) - 1]`;
  const year = `slice(datum.value, 5, 7) === '01' || datum.value === '${ticks[0] ?? ""}' ? slice(datum.value, 0, 4) : ''`;
  return {
    months: run.length,
    encoding: {
      field: "month",
      type: "ordinal",
      scale: { domain: run.map(monthOf) },
      axis: {
        values: ticks,
        labels,
        labelExpr: `[${month}, ${year}]`,
        labelAngle: 0,
        labelOverlap: false,
        grid: true,
        // Below the marks, also where a panel has bands, over which Vega-Lite would draw it.
        zindex: 0,
        title: labels ? "Month" : null,
      },
    },
  };
}

function monthNumber(month: string): number {
  const [, year, of] = /^(\d{4})-(0[1-9]|1[0-2])$/.exec(month) ?? [];
  if (year === undefined) throw new RangeError(`A month is written YYYY-MM; this one is "${month}".`);
  return Number(year) * 12 + Number(of) - 1;
}

function monthOf(number: number): string {
  return `${Math.floor(number / 12)}-${String((number % 12) + 1).padStart(2, "0")}`;
}
