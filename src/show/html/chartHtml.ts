import type { Chart } from "../../chart/Chart.js";
import { escapeHtml } from "../escapeHtml.js";
import { toSvg } from "../toSvg.js";
import { scrollHtml } from "./scrollHtml.js";
import { tableHtml } from "./tableHtml.js";

const mostRows = 500;
const narrowestPx = 560;

/** A chart as a figure: the drawing, its reading in words, and the numbers behind it unless they stand in a table elsewhere. */
export async function chartHtml(chart: Chart, id: string, numbers: boolean): Promise<string> {
  const svg = await toSvg(chart, { id });
  const width = Number(/^<svg[^>]* width="([\d.]+)"/.exec(svg)?.[1] ?? narrowestPx);
  const sized = svg
    .replace(/^(<svg[^>]*?) width="[\d.]+" height="[\d.]+"/, "$1")
    .replace(
      /^<svg/,
      `<svg preserveAspectRatio="xMinYMin meet" style="max-width:${width}px;min-width:${Math.min(width, narrowestPx)}px"`,
    );
  const table = scrollHtml(tableHtml(chart.table, mostRows), chart.table.caption);
  return [
    `<figure>${scrollHtml(sized, chart.title, "drawing")}`,
    `<figcaption>${escapeHtml(chart.reading)}</figcaption></figure>`,
    ...(numbers ? [`<details><summary>The numbers in this chart</summary>${table}</details>`] : []),
  ].join("\n");
}
