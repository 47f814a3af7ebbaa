import { referenceRows } from "./reference.js";

const rows = referenceRows("closed-forms/references.csv");

/** Values of one case of tests/reference/closed-forms/references.csv (made by the R script beside it), in the order written there. */
export function closedForm(name: string): number[] {
  const values = rows.filter((row) => row["case"] === name).map((row) => Number(row["value"]));
  if (values.length === 0) throw new Error(`no reference values for ${name}`);
  return values;
}

/** Names of the cases that start with a text, without it. */
export function closedFormCases(start: string): string[] {
  const names = rows.map((row) => String(row["case"])).filter((name) => name.startsWith(start));
  return [...new Set(names)].map((name) => name.slice(start.length));
}
