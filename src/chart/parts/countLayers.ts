import { palette } from "./palette.js";

/** Layers that write the count of each group above the panel, with `n` before the first. Reads the field `n`. */
export function countLayers(x: Readonly<Record<string, unknown>>): Record<string, unknown>[] {
  const text = { type: "text", baseline: "bottom", color: palette.quietInk };
  return [
    {
      mark: text,
      encoding: { x, y: { value: -6 }, text: { field: "n", type: "quantitative", format: ",d" } },
    },
    {
      data: { values: [{}] },
      mark: { ...text, text: "n", align: "right", fontStyle: "italic" },
      encoding: { x: { value: -8 }, y: { value: -6 } },
    },
  ];
}
