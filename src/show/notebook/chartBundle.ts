import type { Chart } from "../../chart/Chart.js";
import { toPng } from "../toPng.js";
import type { MimeBundle } from "./MimeBundle.js";

/**
 * A chart as a live drawing, a picture for where that is not drawn, and words. No HTML among them: JupyterLab would prefer it to the
 * drawing. The drawing keeps its schema version 5, the last one that all front ends draw.
 */
export async function chartBundle(chart: Chart): Promise<MimeBundle> {
  const { png, width, height } = await toPng(chart, { scale: 2 });
  return {
    data: {
      "application/vnd.vegalite.v5+json": chart.spec,
      "image/png": Buffer.from(png).toString("base64"),
      "text/plain": `${chart.title}\n${chart.reading}`,
    },
    metadata: { "image/png": { width, height } },
  };
}
