import type { Encoding } from "./Encoding.js";

/** What the byte order mark says with which a file begins (The Unicode Standard, section 23.8). */
export interface MarkedEncoding {
  readonly encoding: Encoding;
  readonly bigEndian: boolean;
}

/** The encoding that the first bytes of a file mark; null when there is no byte order mark. */
export function markedEncoding(start: Uint8Array): MarkedEncoding | null {
  const [first, second, third] = start;
  if (first === 0xef && second === 0xbb && third === 0xbf) return { encoding: "utf-8", bigEndian: false };
  if (first === 0xff && second === 0xfe) return { encoding: "utf-16", bigEndian: false };
  if (first === 0xfe && second === 0xff) return { encoding: "utf-16", bigEndian: true };
  return null;
}
