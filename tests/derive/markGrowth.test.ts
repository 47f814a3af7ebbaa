import { expect, test } from "vitest";
import { markGrowth } from "../../src/derive/markGrowth.js";
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
