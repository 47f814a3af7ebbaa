import { expect, test } from "vitest";
import { horseCases } from "../../src/derive/horseCases.js";
import { footCases } from "./footCases.js";

// Four horses by hand, feet LF RF LH RH: A 1011, B 0000, C 0010, D 0011; 3 of 4 horses, 6 of 16 feet.
test("a horse is a case when any of its feet is", () => {
  const grades: Record<string, string> = { A: "1011", B: "0000", C: "0010", D: "0011" };
  const lines = Object.entries(grades).flatMap(([horse, feet]) =>
    ["LF", "RF", "LH", "RH"].map((foot, place) => `2025-01-06 ${horse} ${foot} ${feet[place] ?? ""}`),
  );
  const rows = horseCases(footCases(lines));
  expect(rows.map((row) => [row.horseId, row.thrush, row.feetWithThrush, row.feetGraded, row.feetMissing])).toEqual([
    ["A", true, 3, 4, 0],
    ["B", false, 0, 4, 0],
    ["C", true, 1, 4, 0],
    ["D", true, 2, 4, 0],
  ]);
});

test("feet without a grade are counted; without any grade the horse is null", () => {
  const rows = horseCases(
    footCases(["2025-01-06 A LF 0", "2025-01-06 A RF -", "2025-01-06 B LF -", "2025-01-06 B H 2", "2025-02-06 A LF 1"]),
  );
  expect(rows).toMatchObject([
    { horseId: "A", visitDate: "2025-01-06", thrush: false, feetGraded: 1, feetMissing: 1 },
    { horseId: "B", thrush: null, feetGraded: 0, feetMissing: 1 },
    { horseId: "A", visitDate: "2025-02-06", month: "2025-02", monthOfYear: 2, thrush: true },
  ]);
});
