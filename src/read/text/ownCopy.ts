/**
 * The same text in memory of its own. A piece cut from a long text keeps the whole of it alive in V8, so a cell that outlives its
 * block of the file is copied.
 */
export function ownCopy(text: string): string {
  return text.length < 13 ? text : Buffer.from(text, "utf8").toString("utf8");
}
