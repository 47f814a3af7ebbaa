import { describe, expect, test } from "vitest";
import { composedCalls } from "./composedCalls.js";
import { outcomeOf } from "./outcomeOf.js";
import { numbersIn } from "./valuesIn.js";

/** What a fault of the call may be called. */
const wrong = ["not_a_number", "out_of_range", "not_a_count"];

/** Whether the reader is told: an error, a refusal, no result, or a note beside the numbers. */
function told(run: () => unknown): boolean {
  const results: unknown[] = [];
  const code = outcomeOf(() => {
    const result = run();
    results.push(result);
    return result;
  });
  return code !== null || results[0] === null || textsIn(results[0]).length > 0;
}

/** What notes say, however deep. */
function textsIn(value: unknown): readonly string[] {
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]: [string, unknown]) =>
    /^(note|notes|reason|refused|logisticNote)$/.test(key)
      ? [inner].flat().filter((text) => typeof text === "string")
      : textsIn(inner),
  );
}

const estimated = /(^|\.)(estimate|lower|upper|mean|brier|change|probabilityFore|lowest|highest|share)$/;

/** What a result estimates, counts left out. */
function estimatesIn(result: unknown): readonly (readonly [string, number])[] {
  return numbersIn(result).filter(([way]) => estimated.test(way));
}

describe.each(composedCalls)("$name", ({ name, rows, run, numbers, findings, nullable, missing, part, group, level }) => {
  // The last row; the first of several decides of what kind a column is.
  const place = rows.length - 1;
  const one = (column: string, value: unknown) => rows.map((row, i) => (i === place ? { ...row, [column]: value } : row));
  const all = (column: string, value: unknown) => rows.map((row) => ({ ...row, [column]: value }));

  test("gives numbers for sound rows", () => {
    expect(outcomeOf(() => run(rows))).toBeNull();
  });

  test("what is no number is refused", () => {
    for (const column of numbers) {
      for (const value of [NaN, Infinity, -Infinity, "3"]) {
        expect(wrong, `${column} ${String(value)}`).toContain(outcomeOf(() => run(one(column, value))));
      }
    }
  });

  test("what is neither yes nor no is refused", () => {
    for (const column of findings) {
      for (const value of [NaN, 2, "yes"]) {
        expect(wrong, `${column} ${String(value)}`).toContain(outcomeOf(() => run(one(column, value))));
      }
    }
  });

  test("null leaves the row out and is counted, or is refused; it is never 0 or no", () => {
    for (const column of nullable) {
      const [holed, without] = [run(one(column, null)), run(rows.slice(0, place))];
      expect(missing(holed as never) - missing(run(rows) as never), column).toBe(1);
      const [some, fewer] = part === undefined ? [holed, without] : [part(holed as never), part(without as never)];
      expect(estimatesIn(some), column).toEqual(estimatesIn(fewer));
    }
    for (const column of numbers.filter((each) => !nullable.includes(each))) {
      const code = outcomeOf(() => run(one(column, null)));
      if (code === null) expect(run(one(column, null)), column).not.toEqual(run(one(column, 0)));
      else expect(wrong, column).toContain(code);
    }
  });

  test("no rows, and rows that are none", () => {
    // Single numbers, not rows.
    if (rows.length === 1) return;
    expect(told(() => run([]))).toBe(true);
    expect(told(() => run([...rows.slice(0, place), null as unknown as object]))).toBe(true);
  });

  test("one value throughout gives numbers or is refused", () => {
    for (const column of [...numbers, ...findings]) {
      const { [column]: value } = rows[0] as Readonly<Record<string, unknown>>;
      const outcome = outcomeOf(() => run(all(column, value)));
      // `survivalAt` reads off a curve that is made already.
      if (!findings.includes(column) || name === "survivalAt") continue;
      expect(outcome !== null || told(() => run(all(column, value))), column).toBe(true);
    }
  });

  test("one group", () => {
    if (group !== null) expect(told(() => run(all(group, "only")))).toBe(true);
  });

  test("a level that is none", () => {
    if (!level) return;
    for (const value of [0, 1, 95, -0.5]) expect(outcomeOf(() => run(rows, { level: value }))).toBe("out_of_range");
    expect(outcomeOf(() => run(rows, { level: NaN }))).toBe("not_a_number");
  });
});
