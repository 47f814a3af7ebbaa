import { expect, test } from "vitest";
import { shapeDefinitions } from "../../src/derive/shapeDefinitions.js";
import { shapeValues } from "../../src/derive/shapeValues.js";
import { footVisit } from "../footVisit.js";

test("measures and indices of a row, and nothing that has no definition", () => {
  const values = shapeValues(footVisit({ hoofWidthMm: 130, hoofLengthMm: 125, toeAngleDeg: 50, heelAngleDeg: 46 }));
  expect(Object.keys(values).sort()).toEqual(Object.keys(shapeDefinitions).sort());
  const known = Object.entries(values).filter(([, value]) => value !== null);
  expect(Object.fromEntries(known)).toEqual({
    ...{ hoofWidthMm: 130, hoofLengthMm: 125, toeAngleDeg: 50, heelAngleDeg: 46 },
    ...{ shapeIndex: 1.04, toeHeelGapDeg: 4 },
  });
});
