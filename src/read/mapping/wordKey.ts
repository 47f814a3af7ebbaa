/** The form in which texts of a file and words of `study.json` are compared: letter case and the number of blanks make no difference. */
export function wordKey(text: string): string {
  return text.normalize("NFC").trim().replace(/\s+/g, " ").toLowerCase();
}
