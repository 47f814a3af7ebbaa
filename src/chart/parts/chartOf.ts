import type { Chart } from "../Chart.js";
import type { Table } from "../Table.js";
import { chartConfig } from "./chartConfig.js";
import { palette } from "./palette.js";
import { wrapped } from "./wrapped.js";

/** What a chart is made of, before the frame that all charts share. */
export interface Drawing {
  readonly title: string;
  /** How to read the marks, under the title; one entry a line. */
  readonly explained: readonly string[];
  readonly reading: string;
  readonly table: Table;
  /** Width of the whole drawing in px, by which title and explanation are broken into lines. */
  readonly widthPx: number;
  /** Data, marks and encodings: the part of the specification that differs. */
  readonly body: Readonly<Record<string, unknown>>;
}

const titlePxPerLetter = 8.8;
const explainedPxPerLetter = 6.3;

/**
 * The finished chart: schema, title, explanation, paper, look. The background is always light, so that the drawing stays
 * readable on a dark page.
 * @throws RangeError when the body holds NaN or an infinite number, which no renderer could draw.
 */
export function chartOf(drawing: Drawing): Chart {
  const { title, explained, reading, table, widthPx, body } = drawing;
  refuseNonFinite(body, "chart");
  return {
    title,
    reading,
    table,
    spec: {
      $schema: "https://vega.github.io/schema/vega-lite/v5.json",
      description: `${title}. ${reading}`,
      background: palette.paper,
      padding: 14,
      title: {
        text: wrapped(title, Math.floor(widthPx / titlePxPerLetter)),
        subtitle: explained.flatMap((line) => wrapped(line, Math.floor(widthPx / explainedPxPerLetter))),
      },
      ...body,
      config: chartConfig(),
    },
  };
}

function refuseNonFinite(value: unknown, path: string): void {
  if (typeof value === "number" && !Number.isFinite(value)) throw new RangeError(`${path} is ${value}; missing is null.`);
  if (typeof value === "object" && value !== null)
    for (const [key, inner] of Object.entries(value)) refuseNonFinite(inner, `${path}.${key}`);
}
