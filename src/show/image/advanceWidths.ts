/** Width of a text set in one font, in px at a size in px; kerning is left out. */
export type TextWidth = (text: string, sizePx: number) => number;

/**
 * Reads the advance widths of a TrueType font file: tables `head`, `hhea`, `hmtx` and the `cmap` of format 4, which covers the
 * Basic Multilingual Plane (OpenType specification 1.9, "cmap" and "hmtx"). A letter the font lacks takes the width of its
 * missing-glyph box.
 * @throws Error when the file is not such a font.
 */
export function advanceWidths(ttf: Uint8Array): TextWidth {
  const view = new DataView(ttf.buffer, ttf.byteOffset, ttf.byteLength);
  const unitsPerEm = view.getUint16(table(view, "head") + 18);
  const longMetrics = view.getUint16(table(view, "hhea") + 34);
  const metrics = table(view, "hmtx");
  const map = format4(view);
  const advance = (glyph: number) => view.getUint16(metrics + 4 * Math.min(glyph, longMetrics - 1));
  return (text, sizePx) => {
    let units = 0;
    for (const letter of text) units += advance(glyphOf(view, map, letter.codePointAt(0) ?? 0));
    return (units * sizePx) / unitsPerEm;
  };
}

function table(view: DataView, tag: string): number {
  const count = view.getUint16(4);
  for (let record = 12; record < 12 + 16 * count; record += 16) {
    const name = [0, 1, 2, 3].map((at) => String.fromCharCode(view.getUint8(record + at))).join("");
    if (name === tag) return view.getUint32(record + 8);
  }
  throw new Error(`The font has no table ${tag}.`);
}

function format4(view: DataView): number {
  const cmap = table(view, "cmap");
  for (let index = 0; index < view.getUint16(cmap + 2); index++) {
    const subtable = cmap + view.getUint32(cmap + 4 + 8 * index + 4);
    if (view.getUint16(subtable) === 4) return subtable;
  }
  throw new Error("The font has no character map of format 4.");
}

function glyphOf(view: DataView, map: number, code: number): number {
  const twiceSegments = view.getUint16(map + 6);
  const ends = map + 14;
  for (let at = 0; at < twiceSegments; at += 2) {
    if (view.getUint16(ends + at) < code) continue;
    const start = view.getUint16(ends + twiceSegments + 2 + at);
    if (start > code) return 0;
    const delta = view.getUint16(ends + 2 * twiceSegments + 2 + at);
    const rangeAt = ends + 3 * twiceSegments + 2 + at;
    const range = view.getUint16(rangeAt);
    if (range === 0) return (code + delta) & 0xffff;
    const glyph = view.getUint16(rangeAt + range + 2 * (code - start));
    return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
  }
  return 0;
}
