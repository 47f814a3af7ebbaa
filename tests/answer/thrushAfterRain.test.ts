import { expect, test } from "vitest";
import { thrushAfterRain } from "../../src/answer/thrushAfterRain.js";
import { dateOfDay } from "../../src/study/dateOfDay.js";
import { dayNumber } from "../../src/study/dayNumber.js";
import { gaugeDay } from "../study.js";
import { herd, reversed } from "./herd.js";

// January rains 5 mm a day (70 mm in 14 days), from February on it is dry. By hand: after the rain 7 of 10 feet, dry 2 of 10.
const wet: [string, number, number] = ["2025-01-27", 1, 1];
const dry: [string, number, number] = ["2025-03-10", 0, 0];
const study = {
  ...herd({
    A: [wet, dry],
    B: [wet, dry],
    C: [wet, ["2025-03-10", 1, 1]],
    D: [["2025-01-27", 1, 0], dry],
    E: [["2025-01-27", 0, 0], dry],
  }),
  weather: Array.from({ length: 90 }, (_, i) =>
    gaugeDay({ gaugeId: "G", date: dateOfDay(dayNumber("2025-01-01")! + i), rainMm: i < 31 ? 5 : 0 }),
  ),
};

test("feet after the most and the least rain", () => {
  const answer = thrushAfterRain(study);
  expect(answer.kind).toBe("answer");
  if (answer.kind !== "answer") return;
  expect(answer.sentence).toMatch(
    /^After the most rain, 70 mm or more in 14 days, 70% \(.*\) of feet had thrush; after the least, under \d+ mm, 20% \(/,
  );
  expect(answer.charts[0]!.table.rows.filter((row) => row["n"] !== 0).map(({ cases, n }) => [cases, n])).toEqual([
    [2, 10],
    [7, 10],
  ]);
  expect(answer.method).toMatchObject({ n: 20, missing: 0 });
});

test("a gap in the readings takes the visits after it out, and is said", () => {
  const gap = { ...study, weather: study.weather.filter((day) => day.date !== "2025-03-05") };
  expect(thrushAfterRain(gap)).toMatchObject({ kind: "not_enough_data" });
  const none = { ...study, weather: study.weather.filter((day) => day.date !== "2025-03-05" && day.date !== "2025-01-20") };
  expect(thrushAfterRain(none)).toMatchObject({ reason: expect.stringContaining("1 of 14 days have no reading") as string });
});

test("row order does not matter", () => {
  expect(thrushAfterRain(reversed(study))).toEqual(thrushAfterRain(study));
});

test("without rain or visits there is no answer", () => {
  expect(thrushAfterRain({ ...study, weather: [] })).toMatchObject({ reason: "There are no rain readings." });
  expect(thrushAfterRain({ ...study, visits: [] })).toMatchObject({ kind: "not_enough_data" });
});
