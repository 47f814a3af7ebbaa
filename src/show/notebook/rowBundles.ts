import type { Chart } from "../../chart/Chart.js";
import type { ItemsInARow } from "../ItemsInARow.js";
import { partsOf, type Part } from "../partsOf.js";
import { partText } from "../text/partText.js";
import { chartBundle } from "./chartBundle.js";
import type { MimeBundle } from "./MimeBundle.js";
import { partHtml } from "./partHtml.js";

const textWidth = 100;

/** Items in a row: their words and tables in columns, then their charts as one live drawing. */
export async function rowBundles({ items }: ItemsInARow): Promise<MimeBundle[]> {
  const parts = items.map(partsOf);
  const words = parts.map((each) => each.filter((part): part is Exclude<Part, { kind: "chart" }> => part.kind !== "chart"));
  const [first, ...others] = parts.flat().flatMap((part) => (part.kind === "chart" ? [part.chart] : []));
  const columns = words.map(
    (each) => `<div style="flex:1 1 20em;min-width:0;overflow-x:auto">${each.map(partHtml).join("\n")}</div>`,
  );
  const html: MimeBundle = {
    data: {
      "text/html": `<div style="display:flex;flex-wrap:wrap;gap:0 2em;align-items:flex-start">${columns.join("\n")}</div>`,
      "text/plain": words
        .flat()
        .map((part) => partText(part, textWidth))
        .join("\n\n"),
    },
    metadata: {},
  };
  return [
    ...(words.flat().length === 0 ? [] : [html]),
    ...(first === undefined ? [] : [await chartBundle(chartsInARow(first, others))]),
  ];
}

function chartsInARow(first: Chart, others: readonly Chart[]): Chart {
  if (others.length === 0) return first;
  const charts = [first, ...others];
  const frame = ["$schema", "background", "padding", "config", "params"];
  // A selection stands at the top of a specification only; the same one in several charts ties them together.
  const params = new Map(charts.flatMap(({ spec }) => listOf(spec["params"])).map((param) => [JSON.stringify(param), param]));
  const inner = charts.map(({ spec }) => Object.fromEntries(Object.entries(spec).filter(([key]) => !frame.includes(key))));
  const outer = Object.fromEntries(Object.entries(first.spec).filter(([key]) => frame.includes(key)));
  return {
    title: charts.map(({ title }) => title).join(" | "),
    reading: charts.map(({ reading }) => reading).join(" "),
    table: first.table,
    spec: { ...outer, ...(params.size === 0 ? {} : { params: [...params.values()] }), spacing: 40, hconcat: inner },
  };
}

function listOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}
