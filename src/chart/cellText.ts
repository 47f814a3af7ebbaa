import type { TableCell, TableColumn } from "./Table.js";

/**
 * A cell as it is printed: null a dash, booleans yes or no, thousands apart by commas, a proportion of a percent column as a
 * percentage that never rounds to a certainty (`<1%`, `>99%`), a p value never as 0. Numbers of a column without `digits` come with at most six
 * significant digits; percentages without `digits` are whole.
 * @throws RangeError for NaN: missing is null.
 *
 * @private
 */
export function cellText(value: TableCell, column: Pick<TableColumn, "digits" | "percent" | "p">): string {
  if (value === null) return "–";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return value;
  if (Number.isNaN(value)) throw new RangeError("A cell is NaN; missing is null.");
  if (!Number.isFinite(value)) return value > 0 ? "∞" : "−∞";
  if (column.percent === true) return percent(value, column.digits ?? 0);
  const least = 10 ** -(column.digits ?? 6);
  if (column.p === true && value >= 0 && value < least) return `<${least.toFixed(column.digits ?? 6)}`;
  return grouped(column.digits === undefined ? String(Number(value.toPrecision(6))) : value.toFixed(column.digits));
}

function percent(value: number, digits: number): string {
  const text = (value * 100).toFixed(digits);
  const step = (10 ** -digits).toFixed(digits);
  if (Number(text) === 0 && value > 0) return `<${step}%`;
  if (Number(text) === 100 && value < 1) return `>${(100 - 10 ** -digits).toFixed(digits)}%`;
  return `${grouped(text)}%`;
}

function grouped(number: string): string {
  const [, sign = "", whole = number, rest = ""] = /^(-?)(\d+)(\.\d+)?$/.exec(number) ?? [];
  const zero = /^[0.]*$/.test(whole + rest);
  const apart = /^\d{5,}$/.test(whole) ? whole.replace(/\B(?=(\d{3})+$)/g, ",") : whole;
  return `${zero || sign === "" ? "" : "−"}${apart}${rest}`;
}
