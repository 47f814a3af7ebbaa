import { expect, test } from "vitest";
import { newAndStandingThrush } from "../../src/answer/newAndStandingThrush.js";
import { herd, renamed, reversed } from "./herd.js";

const days = ["2025-01-01", "2025-02-10", "2025-03-22"];
const graded = (fore: readonly number[], hind: readonly number[]) =>
  days.map((day, place): [string, number, number] => [day, fore[place]!, hind[place]!]);
// By hand, gaps of 40 days. New: A fore, B hind, D hind; again: E fore, which was there at first and cleared; standing for three: B fore.
// Days at risk: A 20 + 80, B 20, C 80 + 80, D 80 + 40 + 20, E 20 + 80 = 520; 4 / 520 x 100 x 30.4375 = 23.41 a 100 months.
const study = herd({
  A: graded([0, 1, 0], [0, 0, 0]),
  B: graded([1, 1, 2], [0, 1, 1]),
  C: graded([0, 0, 0], [0, 0, 0]),
  D: graded([0, 0, 0], [0, 0, 1]),
  E: graded([1, 0, 1], [0, 0, 0]),
});

test("bouts, who stands, and the rate", () => {
  const answer = newAndStandingThrush(study);
  expect(answer.kind === "answer" && answer.sentence).toMatch(
    /^Of 10 feet graded at two visits or more, 4 went off after a clear visit \(4 times in all, 1 of those after an earlier bout had cleared\); 1 foot has had it at the last 3 graded visits or more\. New cases came at 23\.4 \(95% interval [\d.]+ to [\d.]+\) in 100 months of a foot that was clear\.$/,
  );
  const [counts, standing] = answer.kind === "answer" ? answer.tables : [];
  expect(counts!.rows.map(({ bouts, fore, hind, cleared, standing: open }) => [bouts, fore, hind, cleared, open])).toEqual([
    [3, 1, 2, 1, 2],
    [1, 1, 0, 0, 1],
    [2, 2, 0, 1, 1],
  ]);
  expect(standing!.rows).toEqual([
    {
      ...{ horse: "B", foot: "near fore", visits: 3, worst: 2 },
      ...{ began: "not known; there on 1 Jan 2025", lastSeen: "22 Mar 2025" },
    },
  ]);
});

test("without a bout it says so, and claims no rate above what none in so long allows", () => {
  const clear = herd(Object.fromEntries(["A", "B", "C", "D", "E"].map((name) => [name, graded([0, 0, 0], [0, 0, 0])])));
  const answer = newAndStandingThrush(clear);
  expect(answer.kind === "answer" && answer.sentence).toMatch(
    /^Of 10 feet graded at two visits or more, none went off after a clear visit; none has stood for 3 graded visits running\./,
  );
  // Days at risk 10 feet x 80 = 800, 26.28 months; exact upper limit of none, 3.6889 (Ulm 1990, chi-square quantile / 2), over 0.2628.
  expect(answer.kind === "answer" && answer.sentence).toContain("New cases came at 0.0 (95% interval 0.0 to 14.0)");
});

test("row order does not matter, nor what horses are called", () => {
  expect(newAndStandingThrush(reversed(study))).toEqual(newAndStandingThrush(study));
  const other = newAndStandingThrush(renamed(study));
  const answer = newAndStandingThrush(study);
  expect(other.kind === "answer" && other.sentence).toBe(answer.kind === "answer" && answer.sentence);
});

test("an empty study and four horses are not enough", () => {
  expect(newAndStandingThrush(herd({}))).toMatchObject({
    kind: "not_enough_data",
    reason: expect.stringMatching(/^No horses have/) as string,
  });
  const small = { ...study, visits: study.visits.filter(({ horseId }) => horseId !== "A") };
  expect(newAndStandingThrush(small)).toMatchObject({
    kind: "not_enough_data",
    reason: "4 horses have a frog that was graded at two visits; fewer than 5 tell nothing about frogs that turn.",
  });
});
