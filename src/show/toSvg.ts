import type { LoggerInterface } from "vega";
import type { Chart } from "../chart/Chart.js";
import { escapeHtml } from "./escapeHtml.js";
import { loadVega } from "./image/loadVega.js";

export interface SvgOptions {
  /** Put before every id in the drawing; must differ between drawings on one page. */
  readonly id?: string;
}

/**
 * The chart as an SVG document with `role="img"`, its title and its reading in words. Nothing is fetched.
 * @throws Error when Vega-Lite or Vega has anything to complain of: a chart that warns is a bug.
 */
export async function toSvg(chart: Chart, options: SvgOptions = {}): Promise<string> {
  const { vega, vegaLite } = await loadVega();
  const complaints: string[] = [];
  const complain = (...message: readonly unknown[]) => {
    complaints.push(message.map(String).join(" "));
    return logger;
  };
  const logger: LoggerInterface = {
    level: () => logger,
    error: complain,
    warn: complain,
    info: () => logger,
    debug: () => logger,
  };
  // Vega writes into the data rows it is given.
  const spec = { ...structuredClone(chart.spec), config: { ...(chart.spec["config"] as object), aria: false } };
  const compiled = vegaLite.compile(spec as never, { logger });
  const refuse = () => Promise.reject(new Error("A chart holds its own data and fetches nothing."));
  const loader = { load: refuse, sanitize: refuse, http: refuse, file: refuse };
  const view = new vega.View(vega.parse(compiled.spec), { renderer: "none", logger, loader });
  try {
    const svg = await view.toSVG();
    if (complaints.length > 0) throw new Error(`The chart "${chart.title}" cannot be drawn cleanly: ${complaints.join("; ")}`);
    return described(svg, chart, options.id ?? "chart");
  } finally {
    view.finalize();
  }
}

function described(svg: string, chart: Chart, id: string): string {
  const names = `role="img" aria-labelledby="${escapeHtml(id)}-title ${escapeHtml(id)}-reading"`;
  const words = `<title id="${escapeHtml(id)}-title">${escapeHtml(chart.title)}</title><desc id="${escapeHtml(id)}-reading">${escapeHtml(chart.reading)}</desc>`;
  // The drawing is one image to a screen reader; the roles that Vega gives its parts would be read as images without a name.
  const whole = svg.replaceAll(/<(?:g|path|text|line|rect) [^>]*>/g, (tag) =>
    tag.replaceAll(/ (?:role="graphics-[a-z]+"|aria-(?:label|roledescription)="[^"]*")/g, ""),
  );
  return whole
    .replaceAll(/(<(?:clipPath|linearGradient|radialGradient) id=")/g, `$1${escapeHtml(id)}-`)
    .replaceAll(/((?:clip-path|fill|stroke)="url\(#)/g, `$1${escapeHtml(id)}-`)
    .replace(/^<svg([^>]*)>/, (_, attributes: string) => `<svg${attributes} ${names}>${words}`);
}
