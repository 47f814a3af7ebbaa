import { shapeByFootChart, type ShapeByFootRow, type UsualBand } from "../chart/shapeByFootChart.js";
import type { Chart } from "../chart/Chart.js";
import type { Table } from "../chart/Table.js";
import { mostUsedStage } from "../derive/mostUsedStage.js";
import { shapeDefinitions } from "../derive/shapeDefinitions.js";
import type { ShapeMeasure } from "../derive/ShapeMeasure.js";
import type { ShapeMeasureRow } from "../derive/ShapeMeasureRow.js";
import { shapeMeasures } from "../derive/shapeMeasures.js";
import { type ReferenceBand, referenceBand } from "../estimate/referenceBand.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { definitionsTable } from "./definitionsTable.js";
import { capital } from "../chart/parts/capital.js";
import { counted } from "./words/counted.js";
import { stageInWords } from "./words/stageInWords.js";
import { levelText } from "../chart/parts/levelText.js";

const { id, question } = asked("usual-shape");
const measures = Object.keys(shapeDefinitions) as ShapeMeasure[];
const ends = ["fore", "hind"] as const;

interface Band {
  readonly measure: ShapeMeasure;
  readonly end: "fore" | "hind";
  readonly horses: number;
  readonly band: ReferenceBand;
}

/** Percentiles of every measure of grown horses' feet, front and hind apart, with intervals. Unit: a foot when it was measured last. */
export function usualShape(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses } = study.settings;
  const grown = shapeMeasures(study).filter(
    ({ side, species, ageClass }) =>
      side !== null && !["donkey", "mule"].includes(species ?? "horse") && ageClass !== "foal" && ageClass !== "yearling",
  );
  const stage = mostUsedStage(grown);
  const rows = latest(grown.filter((row) => row.stage === stage));
  const bands = measures.flatMap((measure) => ends.flatMap((end) => bandOf(rows, measure, end, level)));
  const shown = bands.filter(({ horses }) => horses >= minimumHorses);
  const index = shown.filter(({ measure }) => measure === "shapeIndex");
  if (shown.length === 0) {
    const horses = Math.max(0, ...bands.map((band) => band.horses));
    const reason = `${capital(counted(horses, "horse has", "horses have"))} feet measured at one stage; fewer than ${minimumHorses} give no band.`;
    return { kind: "not_enough_data", id, question, reason };
  }
  const taken = `${stageInWords(stage)}, measured last`;
  const said = index.map(
    ({ end, band }) =>
      `${end === "fore" ? "front" : "hind"} feet ${percentileOf(band, 2.5).toFixed(2)} to ${percentileOf(band, 97.5).toFixed(2)}`,
  );
  const about = said.length === 0 ? "" : ` Width over length: ${said.join(", ")}.`;
  const horses = new Set(rows.map(({ horseId }) => horseId)).size;
  return {
    kind: "answer",
    id,
    question,
    sentence: `Nineteen in twenty feet of ${counted(horses, "grown horse")} of this herd lie in the bands below, each with its interval.${about}`,
    tables: [bandTable(shown, level), definitionsTable([...new Set(shown.map(({ measure }) => measure))])],
    charts: drawn.flatMap((each) => chartOf(rows, shown, each, taken)),
    cautions: [
      "A band says what is usual in this herd, not what is sound: a herd may be usual and yet not well shod or trimmed.",
      "Foals and yearlings are left out: their feet are not small feet of grown horses.",
    ],
    method: {
      unit: "a foot when it was measured last",
      n: new Set(rows.map(({ footId }) => footId)).size,
      missing:
        new Set(study.visits.map(({ horseId, foot }) => `${horseId} ${foot}`)).size -
        new Set(rows.map(({ footId }) => footId)).size,
      text: `${taken.slice(0, 1).toUpperCase()}${taken.slice(1)}; percentiles 2.5, 50 and 97.5 with ${levelText(level)} intervals, horses as clusters (Woodruff). Horses and ponies from two years on, or of unknown age. Ends with fewer than ${counted(minimumHorses, "horse")} have no band. No published norm is used.`,
      links: ["referenceBand", "shapeMeasures", "shapeDefinitions"],
    },
  };
}

/** The last row of each foot and measure; rows come in the order of days. */
function latest(rows: readonly ShapeMeasureRow[]): ShapeMeasureRow[] {
  return [...new Map(rows.map((row) => [`${row.footId}\n${row.measure}`, row])).values()];
}

function bandOf(rows: readonly ShapeMeasureRow[], measure: ShapeMeasure, end: "fore" | "hind", level: number): Band[] {
  const own = rows.filter((row) => row.measure === measure && row.end === end);
  if (own.length === 0) return [];
  const clusters = own.map(({ horseId }) => horseId);
  const band = referenceBand(
    own.map(({ value }) => value),
    { level, clusters },
  );
  return [{ measure, end, horses: new Set(clusters).size, band }];
}

function percentileOf({ percentiles }: ReferenceBand, percentile: number): number {
  return percentiles.find((of) => of.percentile === percentile)?.estimate ?? 0;
}

function bandTable(bands: readonly Band[], level: number): Table {
  const limits = `${levelText(level)} interval`;
  return {
    caption: `Usual shape of this herd: percentiles with their ${limits}s (a dash: beyond the values there are)`,
    columns: [
      { name: "title", title: "Measure" },
      { name: "end", title: "Feet" },
      { name: "horses", title: "Horses" },
      { name: "feet", title: "Feet measured" },
      { name: "low", title: "2.5 %" },
      { name: "lowLimits", title: limits },
      { name: "median", title: "Median" },
      { name: "medianLimits", title: limits },
      { name: "high", title: "97.5 %" },
      { name: "highLimits", title: limits },
    ],
    rows: bands.map(({ measure, end, horses, band }) => {
      const { title, digits } = shapeDefinitions[measure];
      const of = (percentile: number) => band.percentiles.find((each) => each.percentile === percentile);
      const number = (value: number | null | undefined) => ((value ?? null) === null ? "–" : Number(value).toFixed(digits));
      const range = (percentile: number) => `${number(of(percentile)?.lower)} to ${number(of(percentile)?.upper)}`;
      return {
        ...{ title, end: end === "fore" ? "front" : "hind", horses, feet: band.n },
        ...{ low: number(of(2.5)?.estimate), lowLimits: range(2.5) },
        ...{ median: number(of(50)?.estimate), medianLimits: range(50) },
        ...{ high: number(of(97.5)?.estimate), highLimits: range(97.5) },
      };
    }),
  };
}

/** Measures that are drawn foot by foot: roundness, and the lean of the walls to one side. */
const drawn = [
  { measure: "shapeIndex", title: "Width over length of every foot", axis: "Width / length" },
  {
    measure: "wallAngleDifferenceDeg",
    title: "Outer less inner wall angle of every foot",
    axis: "Outer − inner wall, degrees",
  },
] as const;

function chartOf(
  rows: readonly ShapeMeasureRow[],
  shown: readonly Band[],
  { measure, title, axis }: (typeof drawn)[number],
  taken: string,
): Chart[] {
  const bands = shown.flatMap(({ measure: of, end, band }): UsualBand[] => {
    const [lower, median, upper] = [percentileOf(band, 2.5), percentileOf(band, 50), percentileOf(band, 97.5)];
    return of === measure ? [{ end, lower, median, upper }] : [];
  });
  if (bands.length === 0) return [];
  const marks = rows.flatMap(({ measure: of, foot, horseId, value }): ShapeByFootRow[] =>
    of === measure && (foot === "LF" || foot === "RF" || foot === "LH" || foot === "RH") ? [{ horseId, foot, value }] : [],
  );
  const digits = shapeDefinitions[measure].digits;
  return [
    shapeByFootChart(marks, bands, {
      ...{ title, measure: axis, digits },
      taken: `${taken}; band: 2.5 to 97.5 percentile of this herd`,
    }),
  ];
}
