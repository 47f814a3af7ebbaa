import { expect, test } from "vitest";
import { horsesToWatch } from "../../src/answer/horsesToWatch.js";
import { dateOfDay } from "../../src/study/dateOfDay.js";
import { dayNumber } from "../../src/study/dayNumber.js";
import { gaugeDay } from "../study.js";
import { herd, renamed, reversed } from "./herd.js";
import { twoYards } from "./twoYards.js";

// Of six looks each: A1 all with thrush, two horses half, the others one or none; by hand 17 of 72.
const study = twoYards([6, 3, 1, 1, 0, 0], [3, 1, 1, 1, 0, 0]);

test("the horse that stands out is named, and its share is drawn towards the mean", () => {
  const answer = horsesToWatch(study);
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.method).toMatchObject({ n: 72, missing: 0 });
  expect(answer.sentence).toMatch(
    /^Most thrush, against the mean of \d+% of looks, is to be expected in A1, \d+% \(95% interval \d+% to \d+%\)/,
  );
  const [first] = answer.tables[0]!.rows;
  expect(first).toMatchObject({ group: "A1", cases: 6, n: 6 });
  expect(first!["estimate"]).toBeLessThan(1);
  expect(first!["lower"]).toBeGreaterThan(17 / 72);
  expect(answer.tables[0]!.rows).toHaveLength(10);
  expect(answer.method.text).toContain("Rain is not allowed for: it is known before 0 of 72 looks.");
});

test("with rain known, horses are compared on the wettest third of looks", () => {
  // 14 dry days before the first visit, 2 mm a day before the second, 5 mm a day before the third: 0, 28 and 70 mm.
  const perDay = [
    ["2025-01-06", 0],
    ["2025-02-17", 2],
    ["2025-03-31", 5],
  ] as const;
  const weather = perDay.flatMap(([day, rainMm]) =>
    Array.from({ length: 20 }, (_, back) => gaugeDay({ gaugeId: "G", date: dateOfDay(dayNumber(day)! - back), rainMm })),
  );
  const answer = horsesToWatch({ ...study, weather });
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.sentence).toContain("with 70 mm or more in the 14 days before");
  expect(answer.method.text).not.toContain("not allowed for");
});

test("horses that differ by no more than chance are not set apart", () => {
  const answer = horsesToWatch(twoYards([2, 2, 2, 2, 2, 2], [2, 2, 2, 2, 2, 3]));
  expect(answer.kind === "answer" && answer.sentence).toMatch(
    /^Horses differ in thrush by no more than chance would make them; all lie at the mean of \d+% of looks\.$/,
  );
  // No ten of them are the highest, and none has an interval.
  expect(answer).toMatchObject({ tables: [], charts: [] });
});

test("row order and names of horses do not matter", () => {
  expect(horsesToWatch(reversed(study))).toEqual(horsesToWatch(study));
  const [one, other] = [horsesToWatch(study), horsesToWatch(renamed(study))];
  expect(other.kind === "answer" && other.sentence.replaceAll("Horse A", "A").replaceAll("Horse D", "D")).toBe(
    one.kind === "answer" && one.sentence,
  );
});

test("an empty study, four horses, and no thrush at all are not enough", () => {
  expect(horsesToWatch(herd({}))).toMatchObject({ reason: "No horses have a graded frog; fewer than 5 give no comparison." });
  const few = { ...study, visits: study.visits.filter(({ horseId }) => horseId < "A5") };
  expect(horsesToWatch(few)).toMatchObject({ reason: "4 horses have a graded frog; fewer than 5 give no comparison." });
  expect(horsesToWatch(twoYards([0, 0, 0, 0, 0, 0], [0, 0, 0, 0, 0, 0]))).toMatchObject({
    kind: "not_enough_data",
    reason: expect.stringMatching(/^Horses cannot be compared: /) as string,
  });
});

test("a horse that has left counts in the mean and is not listed", () => {
  const horses = study.horses.map((stay) => (stay.horseId === "A1" ? { ...stay, leftOn: "2025-01-20" } : stay));
  const [all, left] = [horsesToWatch(study), horsesToWatch({ ...study, horses })];
  if (all.kind !== "answer" || left.kind !== "answer") throw new Error("no answer");
  expect(left.method.n).toBe(all.method.n);
  expect(left.tables[0]!.rows.map(({ group }) => group)).not.toContain("A1");
  expect(left.tables[0]!.caption).toBe(all.tables[0]!.caption);
});
