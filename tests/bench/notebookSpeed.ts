import { join } from "node:path";
import { readNotebook } from "../../src/run/readNotebook.js";
import { runNotebook } from "../../src/run/runNotebook.js";
import { notebookFolder, notebooks } from "../notebooks/notebooks.js";
import { notebookOf } from "../run/notebookOf.js";

const firstCell = `import { prevalenceByBandChart, show } from "underfoot";
const rows = [{ band: "dry", cases: 3, n: 40, estimate: 0.075, lower: 0.02, upper: 0.2 }];
const options = { bandTitle: "Ground", level: 0.95, unit: "feet", finding: "thrush", caseDefinition: "grade 1 or more" };
await show(prevalenceByBandChart(rows, options));`;

async function secondsOf(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return Math.round((performance.now() - start) / 100) / 10;
}

/** Seconds from nothing to the first chart of a fresh kernel (wanted: under 6), and for all notebooks of the project together (under 40). */
export async function notebookSpeed(): Promise<{
  benchmark: "notebookSpeed";
  firstChartSeconds: number;
  notebooks: Readonly<Record<string, number>>;
  togetherSeconds: number;
}> {
  const firstChartSeconds = await secondsOf(() => runNotebook(notebookOf(firstCell), { folder: notebookFolder }));
  const each: Record<string, number> = {};
  for (const name of notebooks) {
    const notebook = await readNotebook(join(notebookFolder, name));
    each[name] = await secondsOf(() => runNotebook(notebook, { folder: notebookFolder }));
  }
  const togetherSeconds = Math.round(10 * Object.values(each).reduce((sum, seconds) => sum + seconds, 0)) / 10;
  return { benchmark: "notebookSpeed", firstChartSeconds, notebooks: each, togetherSeconds };
}
