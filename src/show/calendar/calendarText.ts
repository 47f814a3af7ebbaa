/**
 * A text as the value of a property: backslash, semicolon and comma escaped, line breaks written `\n`, other control characters but the tab
 * dropped, half a surrogate pair replaced. Source: RFC 5545 sections 3.3.11 (TEXT) and 3.1 (CONTROL).
 */
export function calendarText(text: string): string {
  return Buffer.from(text)
    .toString()
    .replace(/[\\;,]/g, (each) => `\\${each}`)
    .replace(/\r\n?|\n/g, "\\n")
    .replace(/[^\P{Cc}\t]/gu, "");
}
