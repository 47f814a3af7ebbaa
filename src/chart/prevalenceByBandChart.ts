import type { Chart } from "./Chart.js";
import { capital } from "./parts/capital.js";
import { chartOf } from "./parts/chartOf.js";
import { countLayers } from "./parts/countLayers.js";
import { emptyChart } from "./parts/emptyChart.js";
import { greyedRows } from "./parts/greyedRows.js";
import { intervalLayers } from "./parts/intervalLayers.js";
import { proportionColumns } from "./parts/proportionColumns.js";
import { proportionText } from "./parts/proportionText.js";
import type { ProportionRow } from "./ProportionRow.js";
import type { Table } from "./Table.js";
import { levelText } from "./parts/levelText.js";

/** The share with the finding in one band of an exposure, as `0 to 9`; bands are drawn in the order of the rows. */
export interface BandRow extends ProportionRow {
  readonly band: string;
}

export interface PrevalenceByBandOptions {
  /** The finding; without it, the worst band is named. */
  readonly title?: string;
  /** What the bands are of, with the unit: `Rain in the 14 days before the visit (mm)`. */
  readonly bandTitle: string;
  /** Confidence level of the limits in the rows, between 0 and 1. */
  readonly level: number;
  /** What `n` counts, in the plural: `feet seen`. */
  readonly unit: string;
  /** The finding, as in `thrush`. */
  readonly finding: string;
  /** What counts as a case: `grade 1 or more`. */
  readonly caseDefinition: string;
  /** How the interval was made, when it needs saying: `allowing for four feet a horse`. */
  readonly intervalNote?: string;
  /** Why rows with `tooFew` are grey: `fewer than 5 horses`. */
  readonly tooFewReason?: string;
}

/** Prevalence by band of an exposure: a point, its interval and the count for each band. The bands are joined by nothing. */
export function prevalenceByBandChart(rows: readonly BandRow[], options: PrevalenceByBandOptions): Chart {
  const reason = options.tooFewReason ?? "too few to judge";
  const { finding, caseDefinition, unit } = options;
  const title = options.title ?? titleOf(rows, options);
  const table: Table = {
    caption: `Share with ${finding} (${caseDefinition}) by ${lowered(options.bandTitle)}`,
    columns: [{ name: "band", title: options.bandTitle }, ...proportionColumns(unit, `With ${finding}`, options.level)],
    rows: rows.map(({ band, cases, n, estimate, lower, upper }) => ({ band, cases, n, estimate, lower, upper })),
    greyed: greyedRows(rows, reason),
  };
  const drawn = rows.filter((row) => row.estimate !== null);
  if (drawn.length === 0) return emptyChart({ title, why: `No band has a share with ${finding}.`, table });
  const note = options.intervalNote === undefined ? "" : `, ${options.intervalNote}`;
  const widthPx = Math.min(520, Math.max(220, 80 * rows.length));
  return chartOf({
    title,
    explained: [
      `Share of ${unit} with ${finding} (${caseDefinition}) and ${levelText(options.level)} interval${note}; n: ${unit}.`,
      ...(rows.some((row) => row.tooFew === true) ? [`Grey, dashed, hollow: ${reason}.`] : []),
    ],
    reading: `${capital(finding)} by ${lowered(options.bandTitle)}: ${drawn.map((row) => `${row.band}: ${proportionText(row, options.level, unit)}`).join("; ")}.`,
    table,
    widthPx: Math.max(widthPx + 70, 470),
    body: {
      width: widthPx,
      height: 240,
      data: { values: rows.map((row) => ({ ...row, tooFew: row.tooFew === true })) },
      layer: layersOf(rows, options, widthPx / rows.length),
    },
  });
}

/** Width of a letter at most, whichever typeface the reader has. */
const letterPx = 7.5;

function layersOf(rows: readonly BandRow[], options: PrevalenceByBandOptions, bandWidthPx: number): Record<string, unknown>[] {
  // Names that would run into each other are written aslant.
  const aslant = Math.max(...rows.map(({ band }) => band.length)) * letterPx > bandWidthPx;
  const x = {
    field: "band",
    type: "ordinal",
    title: options.bandTitle,
    scale: { domain: rows.map((row) => row.band) },
    axis: { labelAngle: aslant ? -40 : 0, labelLimit: 110, grid: false },
  };
  const percent = (field: string, title: string) => ({ field, type: "quantitative", title, format: ".1~%" });
  return [
    ...intervalLayers({
      x,
      y: {
        type: "quantitative",
        title: `${capital(options.unit)} with ${options.finding}`,
        scale: { zero: true, nice: true },
        axis: { format: "~%", tickCount: 5 },
      },
      tooltip: [
        { field: "band", type: "nominal", title: options.bandTitle },
        percent("estimate", `With ${options.finding}`),
        percent("lower", "Interval from"),
        percent("upper", "to"),
        { field: "cases", type: "quantitative", title: "Cases" },
        { field: "n", type: "quantitative", title: capital(options.unit) },
      ],
    }),
    ...countLayers(x),
  ];
}

function titleOf(rows: readonly BandRow[], { finding, bandTitle }: PrevalenceByBandOptions): string {
  const judged = rows.filter((row) => row.tooFew !== true && row.estimate !== null);
  const worst = judged.reduce<BandRow | null>((most, row) => ((row.estimate ?? 0) > (most?.estimate ?? -1) ? row : most), null);
  if (worst === null || judged.length === 1) return `${capital(finding)} by ${lowered(bandTitle)}`;
  return `${capital(finding)} was most frequent at ${worst.band}: ${lowered(bandTitle)}`;
}

function lowered(text: string): string {
  return text.slice(0, 1).toLowerCase() + text.slice(1);
}
