import { expect, test } from "vitest";
import { markTimes } from "../../src/derive/markTimes.js";
import { dayNumber } from "../../src/study/dayNumber.js";
import { footVisit } from "../footVisit.js";

const seen = "2025-06-30";
const mark = (markBelowCoronetMm: number, cells: Parameters<typeof footVisit>[0] = {}) =>
  footVisit({ visitDate: seen, markKind: "ring", markBelowCoronetMm, ...cells });
const days = (from: string, to: string | null) => (to === null ? null : dayNumber(to)! - dayNumber(from)!);

// By hand: 25 / 0.31 = 80.6 and 25 / 0.202 = 123.8 days back; 80 - 25 = 55 mm left, 177.4 and 272.3 days on. Rates: see growthRates.
test("25 mm below the hairline of an 80 mm toe: began 81 to 124 days ago, out in 177 to 272", () => {
  const row = markTimes([mark(25, { toeLengthMm: 80 })])[0]!;
  expect([days(row.beganLatest, seen), days(row.beganEarliest, seen)]).toEqual([81, 124]);
  expect([days(seen, row.groundEarliest), days(seen, row.groundLatest)]).toEqual([177, 272]);
});

test("a mark that was followed counts once, from where it was last, and did not begin after it was first seen", () => {
  const rows = markTimes([mark(18, { visitDate: "2025-04-07" }), mark(25)]);
  expect(rows).toMatchObject([{ seenOn: seen, belowCoronetMm: 25, beganLatest: "2025-04-07" }]);
  expect(days(rows[0]!.beganEarliest, seen)).toBe(124);
});

test("the toe is that of the foot, the last one up to then, after the trim where there is one", () => {
  const toe = (visitDate: string, toeLengthMm: number, cells: Parameters<typeof footVisit>[0] = {}) =>
    footVisit({ visitDate, toeLengthMm, ...cells });
  const visits = [
    mark(25, { visitDate: "2025-06-02" }),
    toe("2025-05-05", 90, { stage: "before_trim" }),
    toe("2025-05-05", 81, { stage: "after_trim" }),
    toe("2025-03-03", 70, { stage: "after_trim" }),
    toe("2025-07-07", 60, { stage: "after_trim" }),
    toe("2025-06-02", 50, { foot: "RF" }),
  ];
  expect(markTimes(visits)).toMatchObject([{ toeLengthMm: 81, toeMeasuredOn: "2025-05-05" }]);
});

test("without a toe length, or with one shorter than the mark is deep, there is no end", () => {
  const none = { toeLengthMm: null, toeMeasuredOn: null, groundEarliest: null, groundLatest: null };
  expect(markTimes([mark(25)])).toMatchObject([none]);
  expect(markTimes([mark(85, { toeLengthMm: 80 })])).toMatchObject([none]);
});

test("rates can be given, and make sense", () => {
  const row = markTimes([mark(7, { toeLengthMm: 14 })], { slowestMmPerDay: 0.25, fastestMmPerDay: 0.25 })[0]!;
  expect([row.beganEarliest, row.groundLatest]).toEqual(["2025-06-02", "2025-07-28"]);
  expect(() => markTimes([], { slowestMmPerDay: 0, fastestMmPerDay: 0.2 })).toThrow("makes no sense");
});
