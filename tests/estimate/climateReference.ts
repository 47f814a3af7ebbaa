import { referenceRows } from "./reference.js";

const rows = referenceRows("climate/references.csv");

/** One quantity of tests/reference/climate/references.csv (made by the R script beside it), in the order written there. */
export function climateReference(name: string, quantity: string): number[] {
  const values = rows.filter((row) => row["case"] === name && row["quantity"] === quantity).map((row) => Number(row["value"]));
  if (values.length === 0) throw new Error(`no ${quantity} of ${name}`);
  return values;
}
