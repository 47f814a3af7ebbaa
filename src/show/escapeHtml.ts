const entities: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };

/** Text as it may stand in HTML or SVG, between tags or in a quoted attribute. Control characters other than tab and line breaks are dropped. @private */
export function escapeHtml(text: string): string {
  return text
    .replace(/\p{Cc}/gu, (each) => ("\t\n\r".includes(each) ? each : ""))
    .replace(/[&<>"']/g, (each) => entities[each] ?? each);
}
