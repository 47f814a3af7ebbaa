/** A code as written in the tables: lower case, words joined by `_`. `Central sulcus` becomes `central_sulcus`. */
export function codeWord(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/[\s_-]+/g, "_");
}
