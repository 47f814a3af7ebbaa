import { expect, test } from "vitest";
import { unevenPairs } from "../../src/derive/unevenPairs.js";
import { defaultSettings } from "../../src/study/defaultSettings.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

const pairs = (visits: readonly FootVisit[], species: "horse" | "donkey" | null = "horse") =>
  unevenPairs(studyOf({ visits, horses: [horseStay({ horseId: "A", yardId: "Low", species })] }));
const angle = (foot: FootVisit["foot"], toeAngleDeg: number | null, cells: Partial<FootVisit> = {}) =>
  footVisit({ foot, toeAngleDeg, stage: "before_trim", ...cells });

test("left minus right with its sign, and the gap without", () => {
  const rows = pairs([
    angle("RF", 55.5, { hoofWidthMm: 118 }),
    angle("LF", 49, { hoofWidthMm: 124 }),
    angle("LH", 55),
    angle("RH", 50),
  ]);
  expect(rows).toMatchObject([
    { end: "fore", toeAngleDifferenceDeg: -6.5, toeAngleGapDeg: 6.5, widthDifferenceMm: 6, uneven: true, yardId: "Low" },
    { end: "hind", toeAngleDifferenceDeg: 5, toeAngleGapDeg: 5, widthDifferenceMm: null, uneven: false },
  ]);
});

test("fore and hind, stages and days are never paired with each other", () => {
  const rows = pairs([
    angle("LF", 50),
    angle("RH", 52),
    angle("RF", 51, { stage: "after_trim" }),
    angle("RF", 51, { stage: null }),
    angle("RF", 51, { visitDate: "2025-02-10" }),
    angle("F", 51),
  ]);
  expect(rows).toHaveLength(5);
  expect(rows.every((row) => row.toeAngleGapDeg === null && row.uneven === null)).toBe(true);
});

test("the threshold is a setting; donkeys have measures but no flag; an unrecorded species is taken as horse", () => {
  const visits = [angle("LF", 50), angle("RF", 52)];
  const strict = studyOf({ visits, settings: { ...defaultSettings, unevenPairDeg: 1.5 } });
  expect(unevenPairs(strict)[0]!.uneven).toBe(true);
  expect(unevenPairs(strict)[0]!.flag).toMatchObject({ flag: "uneven", value: 2, threshold: 1.5 });
  expect(unevenPairs(strict)[0]!.flag!.source).toContain("Hobbs");
  expect(pairs(visits, "donkey")[0]).toMatchObject({ toeAngleGapDeg: 2, uneven: null, flag: null });
  expect(pairs(visits, null)[0]!.uneven).toBe(false);
});
