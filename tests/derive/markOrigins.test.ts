import { expect, test } from "vitest";
import { markOrigins } from "../../src/derive/markOrigins.js";
import { dayNumber } from "../../src/study/dayNumber.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";

const mark = (markBelowCoronetMm: number | null, cells: Partial<FootVisit> = {}) =>
  footVisit({ visitDate: "2025-06-30", markKind: "abscess_track", markBelowCoronetMm, ...cells });

// 25 mm at the two published rates (30.69 mm in 5 months, 0.202 mm a day; 13 mm in 6 weeks, 0.31 mm a day): 81 to 124 days, by hand.
test("25 mm below the hairline is 81 to 124 days", () => {
  const [origin] = markOrigins([mark(25)]);
  const before = (date: string) => dayNumber("2025-06-30")! - dayNumber(date)!;
  expect([before(origin!.latest), before(origin!.earliest)]).toEqual([81, 124]);
});

test("rates can be given; at the hairline the event is today", () => {
  const [origin] = markOrigins([mark(7)], { slowestMmPerDay: 0.25, fastestMmPerDay: 0.25 });
  expect(origin).toMatchObject({ earliest: "2025-06-02", latest: "2025-06-02" });
  expect(markOrigins([mark(0)])[0]).toMatchObject({ earliest: "2025-06-30", latest: "2025-06-30" });
});

test("rings count, cracks and marks without a distance do not", () => {
  const rows = markOrigins([
    mark(25, { markKind: "ring" }),
    mark(25, { markKind: "crack" }),
    mark(null),
    mark(25, { markKind: null }),
  ]);
  expect(rows.map(({ markKind }) => markKind)).toEqual(["ring"]);
});

test("rates that make no sense are refused", () => {
  expect(() => markOrigins([], { slowestMmPerDay: 0.31, fastestMmPerDay: 0.2 })).toThrow("makes no sense");
  expect(() => markOrigins([], { slowestMmPerDay: 0, fastestMmPerDay: 0.2 })).toThrow("makes no sense");
});
