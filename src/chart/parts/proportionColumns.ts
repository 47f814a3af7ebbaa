import type { TableColumn } from "../Table.js";

/** Columns of a table of proportions: how many, of how many, the share and its limits. */
export function proportionColumns(unit: string, cases: string, level: number): TableColumn[] {
  const interval = `${Number((level * 100).toPrecision(4))}% interval`;
  return [
    { name: "cases", title: cases },
    { name: "n", title: `of ${unit}` },
    { name: "estimate", title: "Share", percent: true },
    { name: "lower", title: `${interval}, from`, percent: true },
    { name: "upper", title: "to", percent: true },
  ];
}
