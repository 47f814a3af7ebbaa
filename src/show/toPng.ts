import type { Chart } from "../chart/Chart.js";
import { shippedFont } from "./image/shippedFont.js";
import { toSvg } from "./toSvg.js";

export interface PngOptions {
  /** Pixels of the picture for each px of the drawing. */
  readonly scale?: number;
}

/** A picture and the size at which it is meant to be seen, in px. */
export interface Png {
  readonly png: Uint8Array;
  readonly width: number;
  readonly height: number;
}

/** The chart as a PNG picture, twice as fine as it is shown unless told otherwise, with the shipped font on every machine. */
export async function toPng(chart: Chart, options: PngOptions = {}): Promise<Png> {
  const svg = await toSvg(chart);
  const { Resvg } = await import("@resvg/resvg-js");
  const font = shippedFont();
  const drawing = new Resvg(svg, {
    fitTo: { mode: "zoom", value: options.scale ?? 2 },
    font: {
      loadSystemFonts: false,
      fontFiles: [font.regular, font.semiBold],
      defaultFontFamily: font.family,
      sansSerifFamily: font.family,
    },
  });
  return { png: drawing.render().asPng(), width: Math.round(drawing.width), height: Math.round(drawing.height) };
}
