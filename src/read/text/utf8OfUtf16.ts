/** A byte that never stands in UTF-8, put where the UTF-16 text is broken, so that its line is found to be faulty. */
const BROKEN = Buffer.from([0xff]);

/** UTF-16 text as UTF-8, the byte order mark with it. Half a pair, or half a code unit at the end, becomes a byte that is no UTF-8. */
export async function* utf8OfUtf16(chunks: AsyncIterable<Buffer>, bigEndian: boolean): AsyncGenerator<Buffer> {
  let odd: Buffer = Buffer.alloc(0);
  let half = "";
  for await (const chunk of chunks) {
    const bytes = Buffer.concat([odd, chunk]);
    const even = bytes.length - (bytes.length % 2);
    odd = bytes.subarray(even);
    const units = bytes.subarray(0, even);
    const text = half + (bigEndian ? units.swap16() : units).toString("utf16le");
    half = /[\ud800-\udbff]$/.exec(text)?.[0] ?? "";
    yield wellFormed(half === "" ? text : text.slice(0, -1));
  }
  if (half !== "" || odd.length > 0) yield BROKEN;
}

function wellFormed(text: string): Buffer {
  const parts = text.split(/\p{Surrogate}/u);
  if (parts.length === 1) return Buffer.from(text, "utf8");
  return Buffer.concat(parts.flatMap((part, index) => [...(index === 0 ? [] : [BROKEN]), Buffer.from(part, "utf8")]));
}
