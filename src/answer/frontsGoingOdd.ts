import { type PairOverTimeRow, pairsOverTimeChart } from "../chart/pairsOverTimeChart.js";
import type { Table } from "../chart/Table.js";
import { mostUsedStage } from "../derive/mostUsedStage.js";
import { pairReadings } from "../derive/pairReadings.js";
import type { ShapeMeasureRow } from "../derive/ShapeMeasureRow.js";
import { shapeThresholds } from "../derive/shapeThresholds.js";
import { unevenPairs } from "../derive/unevenPairs.js";
import { type FootTrend, footTrends } from "../estimate/footTrends.js";
import { minimumDetectableOf } from "../estimate/minimumDetectableOf.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { definitionsTable } from "./definitionsTable.js";
import { counted } from "./words/counted.js";
import { listed } from "./words/listed.js";
import { shortDate } from "./words/shortDate.js";
import { stageInWords } from "./words/stageInWords.js";

const { id, question } = asked("fronts-going-odd");
/** Pairs that are drawn: the most uneven ones. */
const DRAWN = 6;

interface Pair {
  readonly horseId: string;
  readonly readings: readonly ShapeMeasureRow[];
  readonly last: ShapeMeasureRow;
  readonly trend: FootTrend | null;
  readonly apart: boolean | null;
}

/** Left less right toe angle of the front feet, measured last and over time. Unit: a pair of front feet. */
export function frontsGoingOdd(study: Study): Answer | NotEnoughData {
  const { level, unevenPairDeg } = study.settings;
  const species = new Map(study.horses.map((stay) => [stay.horseId, stay.species]));
  const fores = unevenPairs(study).filter(
    ({ end, horseId }) => end === "fore" && !["donkey", "mule"].includes(species.get(horseId) ?? "horse"),
  );
  const all = pairReadings(fores);
  const stage = mostUsedStage(all);
  const rows = all.filter((row) => row.stage === stage);
  if (rows.length === 0) {
    const reason = "No horse has the toe angle of both front feet from one day and stage.";
    return { kind: "not_enough_data", id, question, reason };
  }
  const angle = minimumDetectableOf(study.visits, "toeAngleDeg", { level });
  const minimumDetectable = angle === null ? null : angle * Math.SQRT2;
  const trends = footTrends(rows, { level, minimumDetectable });
  const pairs = pairsOf(rows, trends.feet);
  const uneven = pairs.filter(({ last }) => Math.abs(last.value) > unevenPairDeg);
  const apart = pairs.filter((pair) => pair.apart === true);
  return {
    kind: "answer",
    id,
    question,
    sentence: `Measured last, ${uneven.length} of ${counted(pairs.length, "pair")} of front feet differed by more than ${unevenPairDeg} degrees${uneven.length === 0 ? "" : `: ${listed(uneven.map(({ horseId }) => horseId))}`}. ${growingWords(apart, minimumDetectable)}`,
    tables: [pairTable(pairs), publishedTable(pairs), definitionsTable(["toeAngleDeg"])],
    charts: [
      pairsOverTimeChart(pairs.slice(0, DRAWN).map(drawn), {
        title: `Front pairs, the ${Math.min(DRAWN, pairs.length)} most uneven when measured last`,
        ...{ unevenPairDeg, taken: stageInWords(stage) },
      }),
    ],
    cautions: [
      "An uneven pair may be born, grown or trimmed; the records do not say which.",
      `Authors draw the line at different gaps; this study sets ${unevenPairDeg} degrees.`,
    ],
    method: {
      unit: "a pair of front feet",
      n: pairs.length,
      missing: new Set(fores.map(({ horseId }) => horseId)).size - pairs.length,
      text: `Toe angle left less right of one day, ${stageInWords(stage)}. ${trends.method === "no model" ? `No trend: ${trends.note ?? ""}` : `${trends.method}.`} Growing apart: the trend goes away from 0, its interval leaves out 0, and the change exceeds ${minimumDetectable === null ? "the smallest detectable change, which is not known here, so that nothing is flagged" : `${minimumDetectable.toFixed(1)} degrees, the root of 2 times the smallest detectable change of one angle`}.`,
      links: ["unevenPairs", "pairReadings", "footTrends", "minimumDetectableOf"],
    },
  };
}

function pairsOf(rows: readonly ShapeMeasureRow[], trends: readonly FootTrend[]): Pair[] {
  const of = new Map(trends.map((trend) => [trend.footId, trend]));
  const pairs = [...grouped(rows, ({ footId }) => footId)].flatMap(([footId, readings]): Pair[] => {
    const last = readings.at(-1);
    if (last === undefined) return [];
    const trend = of.get(footId) ?? null;
    const real = trend?.real ?? null;
    const away = (trend?.change.estimate ?? 0) * last.value > 0;
    const apart = real === null ? null : real && away;
    return [{ horseId: last.horseId, readings, last, trend, apart }];
  });
  return pairs.sort((a, b) => Math.abs(b.last.value) - Math.abs(a.last.value) || (a.horseId < b.horseId ? -1 : 1));
}

function growingWords(apart: readonly Pair[], minimumDetectable: number | null): string {
  if (minimumDetectable === null)
    return "The error of reading a toe angle is not known here, so no pair is said to grow apart: let two people measure the same feet on one day.";
  if (apart.length === 0)
    return `None grew apart by more than can be told from reading error (${minimumDetectable.toFixed(1)} degrees).`;
  return `Growing apart: ${listed(apart.map(({ horseId }) => horseId))}.`;
}

function drawn({ horseId, readings }: Pair): PairOverTimeRow {
  return { name: horseId, readings: readings.map(({ visitDate, value }) => ({ visitDate, differenceDeg: value })) };
}

function pairTable(pairs: readonly Pair[]): Table {
  return {
    caption: "Front pairs, the most uneven first (thirty at most)",
    columns: [
      { name: "horseId", title: "Horse" },
      { name: "measured", title: "Measured last" },
      { name: "difference", title: "Left − right, degrees", digits: 1 },
      { name: "times", title: "Readings" },
      { name: "change", title: "Change by the trend", digits: 1 },
      { name: "lower", title: "From", digits: 1 },
      { name: "upper", title: "To", digits: 1 },
      { name: "apart", title: "Growing apart" },
    ],
    rows: pairs.slice(0, 30).map(({ horseId, last, readings, trend, apart }) => ({
      ...{ horseId, measured: shortDate(last.visitDate), difference: last.value, times: readings.length },
      ...{ change: trend?.change.estimate ?? null, lower: trend?.change.lower ?? null, upper: trend?.change.upper ?? null },
      apart: apart === null ? "not known" : apart ? "yes" : "no",
    })),
  };
}

function publishedTable(pairs: readonly Pair[]): Table {
  return {
    caption: "Uneven front pairs by each published threshold",
    columns: [
      { name: "threshold", title: "More than, degrees" },
      { name: "source", title: "Source" },
      { name: "pairs", title: "Pairs" },
      { name: "of", title: "Of" },
    ],
    rows: shapeThresholds.uneven.published.map(({ threshold, source }) => ({
      ...{ threshold, source, pairs: pairs.filter(({ last }) => Math.abs(last.value) > threshold).length, of: pairs.length },
    })),
  };
}
