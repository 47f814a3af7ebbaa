import { expect, test } from "vitest";
import { frontHindContrasts } from "../../src/derive/frontHindContrasts.js";
import type { Foot } from "../../src/study/Foot.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

const sole = (foot: Foot, hoofWidthMm: number, hoofLengthMm: number, cells: Parameters<typeof footVisit>[0] = {}) =>
  footVisit({ foot, hoofWidthMm, hoofLengthMm, stage: "after_trim", ...cells });

// Casanova PM et al. 2012, J Equine Vet Sci 32:231, as reported and rounded there: soles of unshod yearlings, length × width, fore
// 12 × 13 cm, hind 12 × 12 cm: 1.083 against 1.000.
test("fore beside hind of one horse, with type and age class", () => {
  const horses = [horseStay({ horseId: "A", type: "draught", birthYear: 2024, species: "horse" })];
  const visits = [sole("LF", 130, 120), sole("RF", 130, 120), sole("LH", 120, 120)];
  const rows = frontHindContrasts(studyOf({ visits, horses }), ["shapeIndex"]);
  expect(rows).toHaveLength(1);
  expect(rows[0]).toMatchObject({ type: "draught", ageClass: "yearling", foreFeet: 2, hindFeet: 1, hind: 1 });
  expect(rows[0]!.difference).toBeCloseTo(0.0833, 4);
});

test("stages, days and horses stay apart; an end that is missing leaves the difference out", () => {
  const visits = [
    sole("LF", 130, 120),
    sole("LH", 120, 120, { stage: "before_trim" }),
    sole("LH", 120, 120, { visitDate: "2025-02-03" }),
    sole("LH", 120, 120, { horseId: "B" }),
    sole("H", 120, 120),
  ];
  const rows = frontHindContrasts(studyOf({ visits }), ["hoofWidthMm"]);
  expect(rows.map(({ fore, hind, difference }) => [fore, hind, difference])).toEqual([
    [130, null, null],
    [null, 120, null],
    [null, 120, null],
    [null, 120, null],
  ]);
});

test("all measures unless some are named", () => {
  const rows = frontHindContrasts(studyOf({ visits: [sole("LF", 130, 120), sole("LH", 120, 120)] }));
  expect(rows.map(({ measure }) => measure)).toEqual(["hoofWidthMm", "hoofLengthMm", "shapeIndex"]);
});
