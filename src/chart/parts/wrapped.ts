/** Text broken at spaces into lines of at most `most` characters; a longer word keeps its own line. Empty text gives no line. */
export function wrapped(text: string, most: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/).filter((part) => part !== "")) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= most) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
