import { escapeHtml } from "../escapeHtml.js";
import { tableHtml } from "../html/tableHtml.js";
import type { Part } from "../partsOf.js";

/** A part other than a chart as HTML for a notebook cell, without colours, so that it reads in a light and in a dark theme. */
export function partHtml(part: Exclude<Part, { kind: "chart" }>): string {
  switch (part.kind) {
    case "title":
      return `<h3>${escapeHtml(part.text)}</h3>`;
    case "sentence":
    case "markdown":
      return `<p>${escapeHtml(part.text)}</p>`;
    case "method":
      return `<p><em>Method.</em> ${escapeHtml(part.text)}</p>`;
    case "cautions":
      return `<p><strong>Cautions</strong></p><ul>${part.items.map((item) => `<li>${escapeHtml(item)}</li>`).join("")}</ul>`;
    case "table":
      return tableHtml(part.table);
  }
}
