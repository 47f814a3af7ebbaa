import type { TextLine } from "./TextLine.js";

/** CSV text (RFC 4180, line feeds) with these headers; cells that are not named are empty. */
export function csvText(headers: readonly string[], lines: readonly TextLine[]): string {
  const rows = lines.map(({ cells, cutAfter = headers.length, tail = "" }) => {
    const written = headers.slice(0, cutAfter).map((header) => csvCell(cells[header] ?? ""));
    return `${written.join(",")}${tail}`;
  });
  return [headers.join(","), ...rows, ""].join("\n");
}

function csvCell(value: string | number): string {
  const text = String(value);
  return /[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
