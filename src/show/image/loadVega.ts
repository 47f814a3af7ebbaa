import { readFileSync } from "node:fs";
import { advanceWidths } from "./advanceWidths.js";
import { shippedFont } from "./shippedFont.js";

interface TextItem {
  readonly fontSize?: number;
  readonly fontWeight?: number | string;
  readonly limit?: number;
}

interface TextMetrics {
  width: (item: TextItem, text: string | number | null) => number;
}

// Readers of the SVG whose machine lacks the font get a wider one: leave room for it.
const room = 1.08;

/**
 * Vega and Vega-Lite, loaded when first needed, measuring text by the shipped font. Without a canvas Vega takes every letter for 0.8
 * of its height, which leaves holes in legends and margins. Setting `textMetrics.width` is Vega's own way to replace the measure.
 */
export async function loadVega(): Promise<{
  readonly vega: typeof import("vega");
  readonly vegaLite: typeof import("vega-lite");
}> {
  const [vega, vegaLite] = await Promise.all([import("vega"), import("vega-lite")]);
  const { textMetrics } = vega as unknown as { readonly textMetrics: TextMetrics };
  textMetrics.width = measure();
  return { vega, vegaLite };
}

function measure(): TextMetrics["width"] {
  const font = shippedFont();
  const regular = advanceWidths(readFileSync(font.regular));
  const semiBold = advanceWidths(readFileSync(font.semiBold));
  return (item, text) => {
    const heavy = item.fontWeight === "bold" || Number(item.fontWeight) >= 600;
    const width = room * (heavy ? semiBold : regular)(`${text ?? ""}`, item.fontSize ?? 11);
    return item.limit !== undefined && item.limit > 0 ? Math.min(width, item.limit) : width;
  };
}
