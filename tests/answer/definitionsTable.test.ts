import { expect, test } from "vitest";
import { definitionsTable } from "../../src/answer/definitionsTable.js";
import { shapeDefinitions } from "../../src/derive/shapeDefinitions.js";
import type { ShapeMeasure } from "../../src/derive/ShapeMeasure.js";

test("every measure has a definition and a source to print, in the order asked", () => {
  const all = Object.keys(shapeDefinitions) as ShapeMeasure[];
  const { rows } = definitionsTable(all);
  expect(rows).toHaveLength(15);
  for (const { definition, source, unit } of rows)
    expect([String(definition).length > 10, String(source).length > 10, ["mm", "deg", "ratio"].includes(String(unit))]).toEqual([true, true, true]); // prettier-ignore
  expect(definitionsTable(["toeHeelGapDeg", "shapeIndex"]).rows.map(({ title }) => title)).toEqual([
    "Toe-heel gap",
    "Shape index",
  ]);
});
