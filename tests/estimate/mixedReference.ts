import { referenceRows } from "./reference.js";

/** Values of one quantity of one reference fit of mixed/references.csv, by the names written there. */
export function mixedReference(fit: string): (quantity: string) => ReadonlyMap<string | number, number> {
  const rows = referenceRows("mixed/references.csv").filter((row) => row["case"] === fit);
  return (quantity) => {
    const values = rows.filter((row) => row["quantity"] === quantity);
    if (values.length === 0) throw new Error(`no ${quantity} of ${fit}`);
    return new Map(values.map((row) => [row["name"]!, Number(row["value"])]));
  };
}
