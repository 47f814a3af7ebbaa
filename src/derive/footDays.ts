import type { FootVisit } from "../study/FootVisit.js";
import { grouped } from "../study/grouped.js";
import { asWritten } from "./asWritten.js";

/** All rows of one foot on one day. */
export interface FootDay {
  readonly visitDate: string;
  readonly rows: readonly FootVisit[];
}

/** The visits to each foot, its days in order; by horse and foot. Rows before and after a trim of one day stand together. */
export function footDays(visits: readonly FootVisit[]): FootDay[][] {
  const feet = grouped(visits, ({ horseId, foot }) => `${horseId}\n${foot}`);
  return [...feet]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, history]) =>
      [...grouped(history, ({ visitDate }) => visitDate)]
        .sort(([a], [b]) => (a < b ? -1 : 1))
        .map(([visitDate, rows]) => ({ visitDate, rows: asWritten(rows) })),
    );
}
