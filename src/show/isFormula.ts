/**
 * Whether a spreadsheet would run a text as a formula: its first character is = + - @, a tab or a line break, or a full-width = + - @ (OWASP, CSV Injection). @private
 */
export function isFormula(text: string): boolean {
  return /^[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/.test(text);
}
