import { expect, test } from "vitest";
import { badVisitsRunning } from "../../src/answer/badVisitsRunning.js";
import { herd, reversed } from "./herd.js";

// A: bad at the last two of three. B: bad at the last only. C: bad at the first two, clear at the last. D: grade 3 at the only visit. E: nothing graded.
const study = herd({
  A: [
    ["2025-01-01", 0, 0],
    ["2025-02-01", 1, 0],
    ["2025-03-01", 0, 1],
  ],
  B: [
    ["2025-01-01", 0, 0],
    ["2025-02-01", 0, 1],
  ],
  C: [
    ["2025-01-01", 1, 0],
    ["2025-02-01", 1, 0],
    ["2025-03-01", 0, 0],
  ],
  D: [["2025-03-01", 3, 0]],
  E: [["2025-03-01", null, null]],
});

test("runs that reach the last graded visit, and findings for the vet, the vet's first", () => {
  const answer = badVisitsRunning(study);
  expect(answer.kind === "answer" && answer.sentence).toBe(
    "The vet's, by what was recorded at the last visit: D. 1 horse of 4 had thrush at 2 graded visits running or more, the last one included: A.",
  );
  expect(answer.kind === "answer" && answer.tables[0]!.rows.map(({ horse, running, feet }) => [horse, running, feet])).toEqual([
    ["D", 1, "near fore 3"],
    ["A", 2, "near hind 1"],
  ]);
  expect(answer.kind === "answer" && [answer.method.n, answer.method.missing]).toEqual([4, 1]);
  expect(badVisitsRunning(reversed(study))).toEqual(answer);
});

test("nothing bad is said so; nothing graded is not enough", () => {
  const answer = badVisitsRunning(herd({ A: [["2025-01-01", 0, 0]] }));
  expect(answer.kind === "answer" && answer.sentence).toBe(
    "No horse has a finding of its last visit that is the vet's. None had thrush at two graded visits running.",
  );
  expect(badVisitsRunning(herd({ E: [["2025-03-01", null, null]] }))).toMatchObject({ kind: "not_enough_data" });
  expect(badVisitsRunning(herd({}))).toMatchObject({ kind: "not_enough_data" });
});

test("a horse that has left is not listed, nor counted", () => {
  const horses = study.horses.map((stay) => (stay.horseId === "A" ? { ...stay, leftOn: "2025-03-01" } : stay));
  const answer = badVisitsRunning({ ...study, horses });
  expect(answer.kind === "answer" && answer.sentence).toBe(
    "The vet's, by what was recorded at the last visit: D. None had thrush at two graded visits running.",
  );
  expect(answer.kind === "answer" && answer.method.n).toBe(3);
});
