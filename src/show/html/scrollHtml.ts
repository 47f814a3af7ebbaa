import { escapeHtml } from "../escapeHtml.js";

/** A box around what may be wider than a phone: it scrolls by itself, by keyboard too, and has a name. */
export function scrollHtml(inner: string, name: string, kind?: string): string {
  const classes = kind === undefined ? "scroll" : `scroll ${kind}`;
  return `<div class="${classes}" role="group" tabindex="0" aria-label="${escapeHtml(name)}">${inner}</div>`;
}
