import { expect, test } from "vitest";
import { toeGrowth } from "../../src/derive/toeGrowth.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

const horses = [horseStay({ horseId: "A", yardId: "Low", shod: "all" })];
const growth = (visits: readonly FootVisit[]) => toeGrowth(studyOf({ visits, horses }));
const toe = (visitDate: string, stage: FootVisit["stage"], toeLengthMm: number | null, cells: Partial<FootVisit> = {}) =>
  footVisit({ visitDate, stage, toeLengthMm, workDone: "shoe", ...cells });

test("from after one trim to before the next: 13 mm in 6 weeks is 0.31 mm a day", () => {
  // 13 mm in 6 weeks is the growth of mares in Kolstrung R et al. 2012, Med Weter 68:426.
  const rows = growth([
    toe("2025-01-06", "before_trim", 94),
    toe("2025-01-06", "after_trim", 82),
    toe("2025-02-17", "after_trim", 83),
    toe("2025-02-17", "before_trim", 95),
    toe("2025-03-31", "before_trim", 91),
  ]);
  expect(rows).toMatchObject([
    { from: "2025-01-06", to: "2025-02-17", days: 42, afterTrimMm: 82, beforeTrimMm: 95, yardId: "Low", shod: "all" },
    { from: "2025-02-17", to: "2025-03-31", days: 42, afterTrimMm: 83, beforeTrimMm: 91 },
  ]);
  expect(rows[0]!.gainMmPerDay).toBeCloseTo(0.3095, 4);
});

test("shoeing of the foot, age class and the season of the middle", () => {
  const stay = horseStay({ horseId: "A", shod: "fronts", birthYear: 2024 });
  const visits = [toe("2025-04-21", "after_trim", 82, { foot: "RH" }), toe("2025-06-16", "before_trim", 95, { foot: "RH" })];
  const row = () => toeGrowth(studyOf({ visits, horses: [stay] }))[0];
  expect(row()).toMatchObject({ shoeing: "bare", ageClass: "yearling", season: "spring" });
  visits[1] = toe("2025-06-16", "before_trim", 95, { foot: "RH", shoeState: "tight" });
  expect(row()!.shoeing).toBe("shod");
});

test("a trim in between, or a visit that does not say, breaks the pair; a visit where nothing was done does not", () => {
  const with_ = (cells: Partial<FootVisit>) =>
    growth([
      toe("2025-01-06", "after_trim", 82),
      footVisit({ visitDate: "2025-01-20", ...cells }),
      toe("2025-02-17", "before_trim", 95),
    ]);
  expect(with_({ workDone: "reset" })).toEqual([]);
  expect(with_({ workDone: null })).toEqual([]);
  expect(with_({ workDone: "none" })).toHaveLength(1);
});

test("single and unknown stages, other feet and specimens make no pair", () => {
  expect(growth([toe("2025-01-06", "single", 82), toe("2025-02-17", "before_trim", 95)])).toEqual([]);
  expect(growth([toe("2025-01-06", "after_trim", 82), toe("2025-02-17", null, 95)])).toEqual([]);
  expect(growth([toe("2025-01-06", "after_trim", 82), toe("2025-02-17", "before_trim", 95, { foot: "RF" })])).toEqual([]);
  expect(
    growth([toe("2025-01-06", "after_trim", 82, { foot: "F" }), toe("2025-02-17", "before_trim", 95, { foot: "F" })]),
  ).toEqual([]);
});

test("before and after the trim of one day are no growth", () => {
  expect(growth([toe("2025-01-06", "after_trim", 82), toe("2025-01-06", "before_trim", 94)])).toEqual([]);
});
