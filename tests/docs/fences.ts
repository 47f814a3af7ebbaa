/** A fenced block of a page. */
export interface Fence {
  readonly language: string;
  readonly text: string;
  /** Named by a comment on the line before it: the file that the reader is told to write. */
  readonly file: string | null;
  /** Line of the page, from 1. */
  readonly line: number;
}

/** The fenced blocks of a page in Markdown, in order. */
export function fences(markdown: string): Fence[] {
  const pattern = /(?:<!-- file: (\S+) -->\n)?^```(\w*)\n([^]*?)^```$/gm;
  return [...markdown.matchAll(pattern)].map(({ 1: file, 2: language = "", 3: text = "", index }) => ({
    language,
    text,
    file: file ?? null,
    line: markdown.slice(0, index).split("\n").length,
  }));
}
