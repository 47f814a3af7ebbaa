import { cellText } from "../../chart/cellText.js";
import type { Table } from "../../chart/Table.js";
import { escapeHtml } from "../escapeHtml.js";
import { isNumeric } from "../isNumeric.js";
import { tableNotes } from "../tableNotes.js";
import { wordsBelow } from "../wordsBelow.js";

// Dates and short names are not broken over lines; longer texts keep some width, so that a wide table is not stretched by one narrow column.
const unbroken = 16;

/**
 * A table in HTML: caption, headings with their scope, the first column heading its row, numbers flush right, a dash for missing.
 * Rows after the first `most` are cut, with the count. No colours are set, so it reads on a light and on a dark page; greyed rows are
 * also starred and explained below. Words about rows stand below where they are long or all alike.
 */
export function tableHtml(whole: Table, most = 50): string {
  const { table, words } = wordsBelow({ ...whole, rows: whole.rows.slice(0, most) });
  const columns = table.columns.map((column) => ({ ...column, side: isNumeric(table, column) ? "right" : "left" }));
  const greyed = new Set((table.greyed ?? []).map(({ row }) => row));
  const head = columns
    .map((column) => `<th scope="col" style="text-align:${column.side}">${escapeHtml(column.title)}</th>`)
    .join("");
  const rows = table.rows.map((row, index) => {
    const cells = columns.map((column, at) => {
      const text = cellText(row[column.name] ?? null, column);
      const style = `text-align:${column.side}${text.length <= unbroken ? ";white-space:nowrap" : ";min-width:7em"}`;
      if (at > 0) return `<td style="${style}">${escapeHtml(text)}</td>`;
      return `<th scope="row" style="${style}">${escapeHtml(text)}${greyed.has(index) ? " *" : ""}</th>`;
    });
    return `<tr${greyed.has(index) ? ' class="greyed" style="opacity:0.7"' : ""}>${cells.join("")}</tr>`;
  });
  const notes = [...words, ...tableNotes(whole, table.rows.length)].map((note) => `<p class="note">${escapeHtml(note)}</p>`);
  return [
    `<table><caption style="text-align:left"><span>${escapeHtml(table.caption)}</span></caption>`,
    `<thead><tr>${head}</tr></thead>`,
    `<tbody>${rows.join("\n")}</tbody></table>`,
    ...notes,
  ].join("\n");
}
