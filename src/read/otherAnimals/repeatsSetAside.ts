import type { DataReport } from "../../study/DataReport.js";

/**
 * How many rows reading set aside as repeats of each accepted row, by `file` and line of that row. Known from the listed issues only, of
 * which there are at most a hundred a file.
 */
export function repeatsSetAside(report: DataReport): ReadonlyMap<string, number> {
  const repeats = new Map<string, number>();
  for (const { code, file, message } of report.issues) {
    const place = code === "duplicate_row" ? /already stands in (?:(.+), )?line (\d+)\.$/.exec(message) : null;
    if (place === null) continue;
    const key = `${place[1] ?? file}\n${place[2] ?? ""}`;
    repeats.set(key, (repeats.get(key) ?? 0) + 1);
  }
  return repeats;
}
