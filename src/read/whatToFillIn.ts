import { fileTables } from "../study/fileTables.js";
import type { Study } from "../study/Study.js";

/**
 * Sentences that say what a study still needs, one per file without rows and one per choice that is open; empty when nothing is left.
 * The visits come first, since without them nothing can be answered.
 */
export function whatToFillIn(study: Study): string[] {
  const empty = fileTables.filter(({ kind }) => !study.report.inputs.some((input) => input.kind === kind && input.rowsRead > 0));
  const files = empty.map(({ kind, file, row, columns }) => {
    const needed = columns.filter(({ required }) => required).map(({ name }) => name);
    const may = kind === "visits" ? "Fill in" : "If you have it, fill in";
    const list =
      needed.length === 1 ? `${needed.join("")} is` : `${needed.slice(0, -1).join(", ")} and ${needed.at(-1) ?? ""} are`;
    return `${may} ${file}: one row is ${row}; ${list} needed in every row, the other columns where known.`;
  });
  const open = study.report.counts.some(({ code }) => code === "gauge_day_not_stated");
  const gaugeDay =
    "Decide gaugeDay in study.json, by asking the keeper of the gauge which 24 hours a dated reading covers: ends_on_date (up to the morning of the date), starts_on_date (from the morning of the date) or calendar_day (midnight to midnight).";
  return open ? [...files, gaugeDay] : files;
}
