import type { Chart } from "../Chart.js";
import type { Table } from "../Table.js";
import { chartOf } from "./chartOf.js";
import { palette } from "./palette.js";
import { wrapped } from "./wrapped.js";

/** A chart that says in words why nothing is drawn. */
export function emptyChart(empty: { readonly title: string; readonly why: string; readonly table: Table }): Chart {
  const { title, why, table } = empty;
  return chartOf({
    title,
    explained: [],
    reading: why,
    table,
    widthPx: 420,
    body: {
      width: 420,
      height: 36,
      data: { values: [{}] },
      mark: { type: "text", text: wrapped(why, 60), fontSize: 14, lineHeight: 18, align: "left", color: palette.quietInk },
      encoding: { x: { value: 0 }, y: { value: 8 } },
    },
  });
}
