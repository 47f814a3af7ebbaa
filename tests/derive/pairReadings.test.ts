import { expect, test } from "vitest";
import { pairReadings } from "../../src/derive/pairReadings.js";
import { unevenPairs } from "../../src/derive/unevenPairs.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";

test("left less right of each day as rows over time; a pair without both angles has none", () => {
  const foot = (visitDate: string, side: "LF" | "RF", toeAngleDeg: number | null) =>
    footVisit({ visitDate, foot: side, stage: "after_trim", toeAngleDeg });
  const visits = [
    foot("2025-01-06", "LF", 52),
    foot("2025-01-06", "RF", 50),
    foot("2025-02-05", "LF", 51),
    foot("2025-02-05", "RF", 54),
    foot("2025-03-07", "LF", 51),
    foot("2025-03-07", "RF", null),
  ];
  const rows = pairReadings(unevenPairs(studyOf({ visits })));
  expect(rows.map(({ footId, value, daysSinceFirst, stage }) => [footId, value, daysSinceFirst, stage])).toEqual([
    ["A fore pair", 2, 0, "after_trim"],
    ["A fore pair", -3, 30, "after_trim"],
  ]);
});
