/**
 * A text as a cell of a CSV file (RFC 4180): in quotes where it must be. Commas, semicolons, tabs and upright strokes all count, since a spreadsheet set to another
 * delimiter would split the cell and run what follows. @private
 */
export function csvCell(text: string): string {
  return /[",;|\t\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
