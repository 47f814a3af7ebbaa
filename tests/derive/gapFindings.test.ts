import { expect, test } from "vitest";
import { gapFindings } from "../../src/derive/gapFindings.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

const horses = [horseStay({ horseId: "A", yardId: "Low", shod: "fronts", birthYear: 2015 })];
const rows = (...visits: readonly ReturnType<typeof footVisit>[]) => gapFindings(studyOf({ visits, horses }));
const start = footVisit({ visitDate: "2025-01-06", stage: "after_trim", toeLengthMm: 80, workDone: "shoe" });
const look = (cells: Parameters<typeof footVisit>[0] = {}) =>
  footVisit({ visitDate: "2025-03-03", stage: "before_trim", bars: "level", workDone: "shoe", observerId: "K", ...cells });

test("findings beside the days since the foot was last worked on", () => {
  const found = look({ toeLengthMm: 93, flareSite: ["lateral"], crackSite: ["toe"], bars: "folded", whiteLine: "stretched" });
  expect(rows(start, found)).toEqual([
    {
      ...{ horseId: "A", footId: "A LF", yardId: "Low", foot: "LF", end: "fore", shoeing: "shod", ageClass: "adult" },
      ...{ season: "spring", observerId: "K", from: "2025-01-06", visitDate: "2025-03-03", gapDays: 56, toeGainMm: 13 },
      ...{ flare: true, crack: true, barsOvergrown: true, whiteLineOpen: true },
    },
  ]);
});

test("nothing named counts as none only where the wall was looked at", () => {
  expect(rows(start, look())).toMatchObject([{ flare: false, crack: false, barsOvergrown: false, whiteLineOpen: null }]);
  expect(rows(start, look({ bars: null, flareSite: ["toe"] }))).toMatchObject([
    { flare: true, crack: null, barsOvergrown: null, whiteLineOpen: null },
  ]);
  expect(rows(start, look({ bars: null, thrushGrade: 0 }))).toEqual([]);
});

test("a visit that left the foot alone keeps the gap; one that does not say loses it", () => {
  const between = (workDone: "none" | "reset" | null) => footVisit({ visitDate: "2025-02-03", workDone });
  expect(rows(start, between("none"), look()).map(({ gapDays }) => gapDays)).toEqual([56]);
  expect(rows(start, between("reset"), look()).map(({ gapDays }) => gapDays)).toEqual([28]);
  expect(rows(start, between(null), look())).toEqual([]);
});

test("rows after the trim, first visits and specimens are no finding", () => {
  expect(rows(look())).toEqual([]);
  expect(rows(start, look({ stage: "after_trim" }))).toEqual([]);
  expect(rows(start, look({ foot: "F" }), look({ foot: "F", visitDate: "2025-05-05" }))).toEqual([]);
});

test("bare and shod go by the foot", () => {
  const hind = { foot: "RH" } as const;
  expect(rows({ ...start, ...hind }, look(hind))[0]!.shoeing).toBe("bare");
  expect(rows({ ...start, ...hind }, look({ ...hind, shoeState: "worn" }))[0]!.shoeing).toBe("shod");
});
