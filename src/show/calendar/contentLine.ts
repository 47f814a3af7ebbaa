const mostOctets = 75;

/**
 * A content line as it is written: ended by CRLF and folded, so that no line holds more than 75 octets of UTF-8 without its break. A fold
 * stands between two characters, never inside one. Source: RFC 5545 section 3.1.
 */
export function contentLine(line: string): string {
  const lines: string[] = [];
  let [current, octets] = ["", 0];
  for (const character of line) {
    const size = Buffer.byteLength(character);
    if (octets + size > mostOctets) {
      lines.push(current);
      // The space that marks the fold counts.
      [current, octets] = [" ", 1];
    }
    current += character;
    octets += size;
  }
  return [...lines, current].map((each) => `${each}\r\n`).join("");
}
