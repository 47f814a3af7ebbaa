import { cellText } from "../cellText.js";
import type { ProportionRow } from "../ProportionRow.js";

/** A drawn proportion in words: `42% (95% interval 30% to 55%, 48 horses)`. */
export function proportionText(row: ProportionRow, level: number, unit: string): string {
  const percent = (value: number | null) => cellText(value, { percent: true });
  const limits =
    row.lower === null || row.upper === null
      ? "no interval"
      : `${percent(level)} interval ${percent(row.lower)} to ${percent(row.upper)}`;
  return `${percent(row.estimate)} (${limits}, ${cellText(row.n, { digits: 0 })} ${unit})`;
}
