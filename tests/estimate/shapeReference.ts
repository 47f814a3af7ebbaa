import type { Point } from "../../src/estimate/Point.js";
import { referenceRows } from "./reference.js";

const rows = referenceRows("shape/references.csv");

/** Values of one case of tests/reference/shape/references.csv (made by the R script beside it), in the order written there. */
export function shapeReference(name: string): number[] {
  const values = rows.filter((row) => row["case"] === name).map((row) => Number(row["value"]));
  if (values.length === 0) throw new Error(`no reference values for ${name}`);
  return values;
}

/** The invented landmarks of tests/reference/shape/shapes.csv: 30 pairs of a front and a hind foot, two pairs a horse. */
export function inventedShapes(): Point[][] {
  const shapes: Point[][] = [];
  for (const { pair, hind, x, y } of referenceRows("shape/shapes.csv")) {
    (shapes[2 * (Number(pair) - 1) + Number(hind)] ??= []).push({ x: Number(x), y: Number(y) });
  }
  return shapes;
}
