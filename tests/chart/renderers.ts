import { createRequire } from "node:module";
import * as vega from "vega";
import type { LoggerInterface } from "vega";
import * as vegaLite from "vega-lite";
import type { Chart } from "../../src/chart/Chart.js";

/** A Vega-Lite and the Vega that runs what it compiles. */
export interface Renderer {
  readonly name: string;
  readonly vega: typeof vega;
  readonly vegaLite: typeof vegaLite;
  /** The JSON schema that ships with this Vega-Lite. */
  readonly schema: object;
}

const old = createRequire(new URL("../oldest-renderer/package.json", import.meta.url));
const now = createRequire(import.meta.url);

/** The oldest that a reader's JupyterLab may carry, and the one that makes the pictures. */
export const renderers: readonly Renderer[] = [
  {
    name: "Vega-Lite 5.6.1",
    vega: old("vega") as typeof vega,
    vegaLite: old("vega-lite") as typeof vegaLite,
    schema: old("vega-lite/build/vega-lite-schema.json") as object,
  },
  { name: `Vega-Lite ${vegaLite.version}`, vega, vegaLite, schema: now("vega-lite/vega-lite-schema.json") as object },
];

/** What was drawn: the Vega specification, the complaints of compiler and renderer, the scene with its marks. */
export interface Scene {
  readonly compiled: unknown;
  readonly complaints: readonly string[];
  /** Every mark item with a type, as `symbol`, `rule`, `rect`, `text`, and its data, outside axes, legends and titles. */
  readonly items: readonly {
    readonly type: string;
    readonly datum: Readonly<Record<string, unknown>>;
    readonly text?: unknown;
    readonly opacity?: number;
    readonly y?: number;
  }[];
}

/** What the pointer is over: a selection of the chart, the field it goes by and the value of it. */
export interface Pointed {
  readonly selection: string;
  readonly field: string;
  readonly value: string;
}

/** Compiles and runs a chart without a screen. */
export async function scene(chart: Chart, { vega: runtime, vegaLite: compiler }: Renderer, pointed?: Pointed): Promise<Scene> {
  const complaints: string[] = [];
  const note = (...said: readonly unknown[]) => {
    complaints.push(said.map(String).join(" "));
    return logger;
  };
  const logger: LoggerInterface = { level: () => logger, error: note, warn: note, info: () => logger, debug: () => logger };
  const compiled = compiler.compile(chart.spec as never, { logger }).spec;
  // Vega writes its own marks into the data rows.
  const view = new runtime.View(runtime.parse(structuredClone(compiled)), { renderer: "none", logger });
  await view.runAsync();
  if (pointed !== undefined) {
    const { selection, field, value } = pointed;
    // What Vega-Lite keeps of a selection by points.
    await view.data(`${selection}_store`, [{ unit: "test", fields: [{ type: "E", field }], values: [value] }]).runAsync();
  }
  const items: Scene["items"][number][] = [];
  walk((view.scenegraph() as unknown as { readonly root: Mark }).root, items);
  view.finalize();
  return { compiled, complaints, items };
}

interface Item {
  readonly datum?: Readonly<Record<string, unknown>>;
  readonly text?: unknown;
  readonly opacity?: number;
  readonly y?: number;
  readonly items?: readonly Mark[];
}

interface Mark {
  readonly marktype: string;
  readonly role?: string;
  readonly items: readonly Item[];
}

function walk(mark: Mark, into: Scene["items"][number][]): void {
  if (mark.role !== undefined && /axis|legend|title/.test(mark.role)) return;
  for (const item of mark.items) {
    if (mark.marktype === "group") for (const inner of item.items ?? []) walk(inner, into);
    else
      into.push({
        type: mark.marktype,
        datum: item.datum ?? {},
        ...(item.text === undefined ? {} : { text: item.text }),
        ...(item.opacity === undefined ? {} : { opacity: item.opacity }),
        ...(item.y === undefined ? {} : { y: item.y }),
      });
  }
}
