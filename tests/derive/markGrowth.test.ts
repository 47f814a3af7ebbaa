import { expect, test } from "vitest";
import { markGrowth } from "../../src/derive/markGrowth.js";
import { markTimes } from "../../src/derive/markTimes.js";
import { dayNumber } from "../../src/study/dayNumber.js";
import { dateOfDay } from "../../src/study/dateOfDay.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

const mark = (visitDate: string, markBelowCoronetMm: number, cells: Parameters<typeof footVisit>[0] = {}) =>
  footVisit({ visitDate, markKind: "abscess_track", markBelowCoronetMm, ...cells });
const growth = (...visits: readonly ReturnType<typeof mark>[]) =>
  markGrowth(studyOf({ visits, horses: [horseStay({ horseId: "A", yardId: "Low", shod: "fronts", birthYear: 2015 })] }));
const after = (days: number, grownMm: number) => growth(mark("1970-01-01", 5), mark(dateOfDay(days), 5 + grownMm))[0]!;

// Josseck H et al. 1995, Equine Vet J 27:175: 7 mm in 28 days. Kolstrung R et al. 2012, Med Weter 68:426: 13 mm in 6 weeks.
test("published growth, as a mark shows it", () => {
  expect(after(28, 7).grownMmPerDay).toBeCloseTo(0.25, 10);
  expect(after(42, 13).grownMmPerDay).toBeCloseTo(0.3095, 4);
});

// The same stallions: renewed in 11 months. 0.25 mm a day is 7.61 mm in a mean month of 30.4375 days and 83.7 mm in 11, by hand.
test("a wall that grows 7 mm in 28 days is renewed in 11 months when it is 83.7 mm long", () => {
  const mmPerDay = after(28, 7).grownMmPerDay;
  expect(mmPerDay * 30.4375).toBeCloseTo(7.61, 2);
  expect(mmPerDay * 30.4375 * 11).toBeCloseTo(83.7, 1);
  const ring = mark("2025-01-01", 0, { markKind: "ring", toeLengthMm: 83.7 });
  const [times] = markTimes([ring], { slowestMmPerDay: mmPerDay, fastestMmPerDay: mmPerDay });
  const days = dayNumber(times!.groundLatest!)! - dayNumber("2025-01-01")!;
  expect(Math.abs(days - 11 * 30.4375)).toBeLessThanOrEqual(1);
});

// Kolstrung R et al. 2012: 13 mm in 6 weeks is 9.4 mm a month; a third of an inch a month, an American bulletin of the early 20th century as digested in a newspaper, is 8.5.
test("published growth by the month", () => {
  expect(after(42, 13).grownMmPerDay * 30.4375).toBeCloseTo(9.42, 2);
  expect(after(365, (12 * 25.4) / 3).grownMmPerDay * (365 / 12)).toBeCloseTo(8.47, 2);
});

// Reilly JD et al. 1998, Equine Vet J Suppl 26:51: ponies, 30.69 mm without and 35.34 mm with the supplement in 5 months, 15 % more.
test("two ponies over the same five months", () => {
  const [without, with_] = [after(152, 30.69), after(152, 35.34)];
  expect(without.grownMmPerDay).toBeCloseTo(0.202, 3);
  expect(with_.grownMmPerDay / without.grownMmPerDay).toBeCloseTo(1.1515, 4);
});

test("a row for each step of a mark, with foot, shoeing, age class and season of the middle", () => {
  const rows = growth(mark("2025-02-03", 6), mark("2025-03-31", 20, { foot: "LF" }), mark("2025-05-12", 30));
  expect(rows).toMatchObject([
    { from: "2025-02-03", to: "2025-03-31", days: 56, fromMm: 6, toMm: 20, grownMm: 14, season: "spring", footId: "A LF" },
    { from: "2025-03-31", to: "2025-05-12", days: 42, grownMm: 10, shoeing: "shod", ageClass: "adult", yardId: "Low" },
  ]);
});

test("toe lengths are not growth, and neither is another mark", () => {
  expect(growth(mark("2025-02-03", 20, { toeLengthMm: 80 }), mark("2025-03-31", 6, { toeLengthMm: 92 }))).toEqual([]);
});
