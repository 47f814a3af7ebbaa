import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { ShapeMeasure } from "./ShapeMeasure.js";
import type { ShapeMeasureRow } from "./ShapeMeasureRow.js";
import { shapeMeasures } from "./shapeMeasures.js";

/** One foot with its size and its measures, each a mean over the days it was measured at one stage. */
export interface SizedFoot extends Pick<ShapeMeasureRow, "horseId" | "footId" | "foot" | "species" | "ageClass" | "stage"> {
  readonly end: "fore" | "hind";
  /** Root of hoof width times hoof length, geometric mean over the days that have both; null without such a day. */
  readonly sizeMm: number | null;
  readonly values: Readonly<Partial<Record<ShapeMeasure, number>>>;
}

/**
 * Feet of known side with their size: one row for each foot and stage, by horse and foot. Size is the geometric mean of width and
 * length, which has no part in their ratio.
 *
 * Method: of a foot only days in its last age class are used, since a yearling's foot is another foot. Several days of one foot make
 * one value, so that a horse seen often counts no more than others.
 *
 * Missing: a measure that was never taken is left out of `values`.
 *
 * Source: Mosimann JE (1970) J Am Stat Assoc 65:930-945 for the geometric mean as size.
 */
export function sizedFeet(study: Pick<Study, "visits" | "horses">, measures?: readonly ShapeMeasure[]): SizedFoot[] {
  const taken = measures === undefined ? undefined : [...new Set<ShapeMeasure>([...measures, "hoofWidthMm", "hoofLengthMm"])];
  const rows = shapeMeasures(study, taken).filter(({ side }) => side !== null);
  const feet = [...grouped(rows, ({ footId, stage }) => `${footId}\n${stage ?? ""}`).values()];
  const order = ({ footId, stage }: SizedFoot) => `${footId}\n${stage ?? ""}`;
  return feet.map((all) => sized(all, measures)).sort((a, b) => (order(a) < order(b) ? -1 : 1));
}

function sized(all: readonly ShapeMeasureRow[], asked: readonly ShapeMeasure[] | undefined): SizedFoot {
  const { horseId, footId, foot, end, species, ageClass, stage } = all.at(-1)!;
  const own = all.filter((row) => row.ageClass === ageClass);
  const days = [...grouped(own, ({ visitDate }) => visitDate).values()];
  const logs = days.flatMap((day) => {
    const of = (measure: ShapeMeasure) => day.flatMap((row) => (row.measure === measure ? Math.log(row.value) : []));
    const [widths, lengths] = [of("hoofWidthMm"), of("hoofLengthMm")];
    return widths.length === 0 || lengths.length === 0 ? [] : [(mean(widths) + mean(lengths)) / 2];
  });
  const values = [...grouped(own, ({ measure }) => measure)]
    .filter(([measure]) => asked === undefined || asked.includes(measure))
    .map(([measure, of]) => [measure, mean(of.map(({ value }) => value))] as const);
  return {
    ...{ horseId, footId, foot, end: end!, species, ageClass, stage },
    sizeMm: logs.length === 0 ? null : Math.exp(mean(logs)),
    values: Object.fromEntries(values),
  };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
