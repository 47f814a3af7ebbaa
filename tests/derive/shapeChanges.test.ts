import { expect, test } from "vitest";
import { shapeChanges } from "../../src/derive/shapeChanges.js";
import { shapeMeasures } from "../../src/derive/shapeMeasures.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";

const gap = (visitDate: string, heelAngleDeg: number, cells: Parameters<typeof footVisit>[0] = {}) =>
  footVisit({ visitDate, toeAngleDeg: 50, heelAngleDeg, stage: "before_trim", ...cells });
const changes = (visits: Parameters<typeof gap>[], least: Parameters<typeof shapeChanges>[1] = {}) =>
  shapeChanges(shapeMeasures(studyOf({ visits: visits.map((of) => gap(...of)) }), ["toeHeelGapDeg"]), least);

test("last less first, over the days between, whatever the order of the rows", () => {
  expect(
    changes([
      ["2025-06-30", 41],
      ["2025-01-06", 47],
      ["2025-03-10", 40],
    ]),
  ).toEqual([
    {
      ...{ horseId: "A", footId: "A LF", foot: "LF", end: "fore", stage: "before_trim", measure: "toeHeelGapDeg" },
      ...{ from: "2025-01-06", to: "2025-06-30", days: 175, times: 3, first: 3, last: 9, change: 6 },
      ...{ minimumDetectable: null, detectable: null },
    },
  ]);
});

test("a change no larger than the minimum detectable one is not called real", () => {
  const of = (least: number) =>
    changes(
      [
        ["2025-01-06", 47],
        ["2025-06-30", 41],
      ],
      { toeHeelGapDeg: least },
    )[0]!.detectable;
  expect([of(5.9), of(6), of(7)]).toEqual([true, false, false]);
  expect(
    changes(
      [
        ["2025-01-06", 41],
        ["2025-06-30", 47],
      ],
      { toeHeelGapDeg: 5 },
    )[0],
  ).toMatchObject({
    change: -6,
    detectable: true,
  });
});

test("one day is no change; stages, feet and specimens are not mixed", () => {
  expect(
    changes([
      ["2025-01-06", 47],
      ["2025-01-06", 41],
    ]),
  ).toEqual([]);
  expect(
    changes([
      ["2025-01-06", 47],
      ["2025-06-30", 41, { stage: "after_trim" }],
    ]),
  ).toEqual([]);
  expect(
    changes([
      ["2025-01-06", 47],
      ["2025-06-30", 41, { foot: "RF" }],
    ]),
  ).toEqual([]);
  expect(
    changes([
      ["2025-01-06", 47, { foot: "F" }],
      ["2025-06-30", 41, { foot: "F" }],
    ]),
  ).toEqual([]);
});
