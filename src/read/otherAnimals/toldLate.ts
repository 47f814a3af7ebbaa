import type { Source } from "../../study/Source.js";
import type { Study } from "../../study/Study.js";
import type { SetAsideSink } from "../SetAsideRow.js";
import type { RowRule } from "../table/RowRule.js";
import { nonEquineDays } from "./nonEquineDays.js";

/** A file that was read, and how to read it once more under another rule. */
export interface ReadAgain {
  readonly file: string;
  readonly again: (rule: RowRule<Source>, sink: SetAsideSink) => Promise<unknown>;
}

/**
 * Tells a sink of the rows that were set aside after all files were read, as they stand in their files: the files that hold such rows are read
 * once more. `before` is the study as it was read, `after` the one without them.
 */
export async function toldLate(before: Study, after: Study, files: readonly ReadAgain[], sink: SetAsideSink): Promise<void> {
  const signs = new Map<string, string>();
  for (const day of nonEquineDays(before)) {
    const found = `does not look like a horse: ${day.signs.join("; ")}`;
    signs.set(`${day.horseId}\n${day.visitDate}`, found);
    if (!signs.has(day.horseId)) signs.set(day.horseId, found);
  }
  const late = new Map<string, Map<number, string>>();
  for (const table of ["visits", "horses", "outlines"] as const) {
    const kept = new Set<Source>(after[table]);
    for (const row of before[table]) {
      if (kept.has(row)) continue;
      const ofFile = late.get(row.file) ?? new Map<number, string>();
      late.set(row.file, ofFile);
      const ofDay = "visitDate" in row ? signs.get(`${row.horseId}\n${row.visitDate}`) : undefined;
      ofFile.set(row.line, ofDay ?? signs.get(row.horseId) ?? "");
    }
  }
  for (const { file, again } of files) {
    const lines = late.get(file);
    if (lines === undefined) continue;
    const rule: RowRule<Source> = {
      accepts({ line }, report) {
        const found = lines.get(line);
        if (found !== undefined) report({ code: "not_equine_by_signs", severity: "set_aside", found, hint: "" });
        return found === undefined;
      },
    };
    await again(rule, (from, row) => {
      if (lines.has(row.line)) sink(from, row);
    });
  }
}
