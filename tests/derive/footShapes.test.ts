import { expect, test } from "vitest";
import { footShapes } from "../../src/derive/footShapes.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

const horses = [
  horseStay({ horseId: "A", yardId: "Low", leftOn: "2025-05-31", shod: "bare" }),
  horseStay({ horseId: "A", yardId: "High", joinedOn: "2025-06-01", shod: "fronts" }),
  horseStay({ horseId: "D", yardId: "Low", species: "donkey" }),
];
const angles = { toeAngleDeg: 52, heelAngleDeg: 45 };

test("stages stay apart, unknown stage included", () => {
  const visits = (["after_trim", null, "before_trim", "single"] as const).map((stage) => footVisit({ stage, ...angles }));
  const rows = footShapes(studyOf({ visits, horses }));
  expect(rows.map((row) => row.stage)).toEqual(["after_trim", null, "before_trim", "single"]);
  expect(rows.every((row) => row.toeHeelGapDeg === 7)).toBe(true);
});

test("yard and shoeing are those of the day, flags those of the species", () => {
  const visits = [
    footVisit({ visitDate: "2025-06-01", ...angles }),
    footVisit({ visitDate: "2025-05-31", foot: "RH", ...angles }),
    footVisit({ visitDate: "2025-05-31", horseId: "D", ...angles }),
  ];
  const rows = footShapes(studyOf({ visits, horses }));
  expect(rows.map(({ horseId, yardId, shod, end, side, underrun }) => [horseId, yardId, shod, end, side, underrun])).toEqual([
    ["A", "Low", "bare", "hind", "right", true],
    ["D", "Low", null, "fore", "left", null],
    ["A", "High", "fronts", "fore", "left", true],
  ]);
});

test("a row without any index is left out", () => {
  const visits = [
    footVisit({ thrushGrade: 1, hoofWidthMm: 120 }),
    footVisit({ foot: "RF", hoofWidthMm: 120, hoofLengthMm: 125 }),
  ];
  expect(footShapes(studyOf({ visits, horses })).map((row) => row.foot)).toEqual(["RF"]);
});
