import type { Column } from "../../study/Column.js";

/** A converted value behind the text it was made from, in brackets; empty when nothing was converted. */
export function inUnit({ unit }: Column, converted: string | null): string {
  return converted === null ? "" : ` (${converted} ${unit ?? ""})`;
}
