import { readFileSync } from "node:fs";
import { Resvg } from "@resvg/resvg-js";
import { expect, test } from "vitest";
import { advanceWidths } from "../../../src/show/image/advanceWidths.js";
import { shippedFont } from "../../../src/show/image/shippedFont.js";

const font = shippedFont();

// The reference is resvg 2.6.2, which shapes text with rustybuzz: how much further fifty more letters reach.
function widthByResvg(letter: string, weight: number): number {
  const reach = (count: number) => {
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="9000" height="100"><text x="0" y="60" font-size="40" font-weight="${weight}" font-family="${font.family}">${letter.repeat(count)}</text></svg>`;
    const options = { font: { loadSystemFonts: false, fontFiles: [font.regular, font.semiBold] } };
    return new Resvg(svg, options).getBBox()?.width ?? 0;
  };
  return reach(60) - reach(10);
}

test.each([
  ["regular", 400, "nmWi0%–éŁ"],
  ["semiBold", 600, "nmWi0%–éŁ"],
] as const)("widths of %s agree with the shaping library", (file, weight, letters) => {
  const width = advanceWidths(readFileSync(font[file]));
  // Half a pixel over fifty letters of 40 px: outlines are fitted to whole units in the box.
  for (const letter of letters) expect(Math.abs(width(letter.repeat(50), 40) - widthByResvg(letter, weight))).toBeLessThan(0.5);
});

test("widths add up, grow with size, and an unknown letter has one too", () => {
  const width = advanceWidths(readFileSync(font.regular));
  expect(width("", 12)).toBe(0);
  expect(width("near fore", 20)).toBeCloseTo(2 * width("near fore", 10), 10);
  expect(width("ab", 12)).toBeCloseTo(width("a", 12) + width("b", 12), 10);
  expect(width("\u{1F434}", 12)).toBeGreaterThan(0);
});

test("what is no font is refused", () => {
  expect(() => advanceWidths(new Uint8Array(64))).toThrow(/no table/);
});
