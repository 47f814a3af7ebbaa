import { fourFeetChart, type FourFeetRow } from "../chart/fourFeetChart.js";
import { asOfDate } from "../derive/asOfDate.js";
import { shapeDefinitions } from "../derive/shapeDefinitions.js";
import type { ShapeMeasure } from "../derive/ShapeMeasure.js";
import type { ShapeMeasureRow } from "../derive/ShapeMeasureRow.js";
import { shapeMeasures } from "../derive/shapeMeasures.js";
import { referenceBand } from "../estimate/referenceBand.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { definitionsTable } from "./definitionsTable.js";
import { counted } from "./words/counted.js";
import { footInWords } from "./words/footInWords.js";
import { longDate } from "./words/longDate.js";
import { stageInWords } from "./words/stageInWords.js";

const { id, question } = asked("feet-of-one-visit");
const measures: readonly ShapeMeasure[] = [
  "shapeIndex",
  "frogIndex",
  "toeHeelRatio",
  "toeHeelGapDeg",
  "wallAngleDifferenceDeg",
  "toeAngleDeg",
];

interface Placed {
  readonly row: ShapeMeasureRow;
  readonly drawn: FourFeetRow;
}

/** Measures of the four feet of one horse at the visit at which most were measured last, beside the bands of the herd at that stage. */
export function feetOfOneVisit(study: Study, horseId: string): Answer | NotEnoughData {
  const { minimumHorses } = study.settings;
  const asOf = asOfDate(study);
  const all = shapeMeasures(study, measures).filter(
    ({ side, visitDate }) => side !== null && (asOf === null || visitDate <= asOf),
  );
  const own = lastVisit(all.filter((row) => row.horseId === horseId));
  const [first] = own;
  if (first === undefined) {
    const reason = `No shape of a foot of ${horseId} is on record.`;
    return { kind: "not_enough_data", id, question, reason };
  }
  const { stage, visitDate } = first;
  const herd = latest(all.filter((row) => row.stage === stage && row.horseId !== horseId));
  const placed = own.flatMap((row): Placed[] => {
    const like = herd.filter(({ measure, end }) => measure === row.measure && end === row.end);
    if (new Set(like.map((each) => each.horseId)).size < minimumHorses) return [];
    return [{ row, drawn: drawnOf(row, like) }];
  });
  if (placed.length === 0) {
    const reason = `Fewer than ${minimumHorses} other horses were measured ${stageInWords(stage)}, so there is no herd to stand beside.`;
    return { kind: "not_enough_data", id, question, reason };
  }
  const outside = placed.filter(({ drawn }) => drawn.value < drawn.lower || drawn.value > drawn.upper);
  const titles = measures.map((measure) => shapeDefinitions[measure].title);
  return {
    kind: "answer",
    id,
    question,
    sentence: `On ${longDate(visitDate)}, ${stageInWords(stage)}, ${outside.length} of ${counted(placed.length, "measure")} of the feet of ${horseId} lay outside the band of the other horses of this herd.`,
    tables: [definitionsTable(measures)],
    charts: [
      fourFeetChart(
        placed.map(({ drawn }) => drawn),
        {
          title: `Four feet of ${horseId} on ${longDate(visitDate)}`,
          taken: `${stageInWords(stage)}; band: 2.5 to 97.5 percentile of the other horses`,
          measures: titles,
        },
      ),
    ],
    cautions: ["A foot outside the band is unusual in this herd, which does not make it unsound; one inside may be unsound."],
    method: {
      unit: "a measure of a foot",
      n: placed.length,
      missing: 4 * measures.length - placed.length,
      text: `The last visit and stage with the most measures of this horse, the mean where several observers read one. Bands: percentiles of the last reading of each foot of the same end of the other horses at the same stage, from ${counted(minimumHorses, "horse")} up.`,
      links: ["shapeMeasures", "referenceBand", "shapeDefinitions"],
    },
  };
}

/** Of the last day with measures the stage with the most of them; of equal ones the earlier in a visit. */
function lastVisit(rows: readonly ShapeMeasureRow[]): ShapeMeasureRow[] {
  const day = rows.reduce((last, { visitDate }) => (visitDate > last ? visitDate : last), "");
  const read = oneEach(rows.filter(({ visitDate }) => visitDate === day));
  const stages = (["before_trim", "single", "after_trim", null] as const).map((stage) =>
    read.filter((row) => row.stage === stage),
  );
  return stages.reduce((most, of) => (of.length > most.length ? of : most), []);
}

/** The last reading of each foot and measure. */
function latest(rows: readonly ShapeMeasureRow[]): ShapeMeasureRow[] {
  return [...new Map(oneEach(rows).map((row) => [`${row.footId}\n${row.measure}`, row])).values()];
}

/** Readings of one foot, day, stage and measure by several observers are one, their mean. */
function oneEach(rows: readonly ShapeMeasureRow[]): ShapeMeasureRow[] {
  const readings = grouped(rows, ({ footId, visitDate, stage, measure }) => [footId, visitDate, stage, measure].join("\n"));
  return [...readings.values()].flatMap((of) =>
    of.slice(0, 1).map((row) => ({ ...row, value: of.reduce((sum, { value }) => sum + value, 0) / of.length })),
  );
}

function drawnOf({ foot, measure, value }: ShapeMeasureRow, like: readonly ShapeMeasureRow[]): FourFeetRow {
  const { percentiles } = referenceBand(
    like.map((row) => row.value),
    { clusters: like.map(({ horseId }) => horseId) },
  );
  const of = (percentile: number) => percentiles.find((each) => each.percentile === percentile)?.estimate ?? value;
  const { title, unit, digits } = shapeDefinitions[measure];
  const text = `${value < 0 ? "−" : ""}${Math.abs(value).toFixed(digits)}${unit === "deg" ? "°" : ""}`;
  return {
    ...{ foot: footInWords(foot) as FourFeetRow["foot"], measure: title, value, text },
    ...{ lower: of(2.5), median: of(50), upper: of(97.5) },
  };
}
