import { type FrontHindRow, frontHindShapeChart } from "../chart/frontHindShapeChart.js";
import { type FrontHindShape, frontHindShape } from "../derive/frontHindShape.js";
import { describe } from "../estimate/describe.js";
import { meanInterval } from "../estimate/meanInterval.js";
import { grouped } from "../study/grouped.js";
import { capital } from "../chart/parts/capital.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { counted } from "./words/counted.js";
import { levelText } from "../chart/parts/levelText.js";

const { id, question } = asked("front-and-hind");
const stageWords = {
  before_trim: "before trimming",
  after_trim: "after trimming",
  single: "measured once a visit",
  none: "stage not recorded",
};

/** Shape index of fore beside hind feet, within the horse. Unit: a horse. */
export function frontAndHind(study: Study): Answer | NotEnoughData {
  const { settings } = study;
  const species = new Map(study.horses.map((stay) => [stay.horseId, stay.species]));
  const horses = frontHindShape(study.visits).filter(
    ({ horseId }) => !["donkey", "mule"].includes(species.get(horseId) ?? "horse"),
  );
  const stage = mostUsedStage(horses);
  const rows = perHorse(horses.filter((row) => row.stage === stage));
  const pairs = rows.flatMap((row) =>
    row.frontIndex === null || row.hindIndex === null ? [] : [row.frontIndex - row.hindIndex],
  );
  if (pairs.length < settings.minimumHorses) {
    const reason = `${capital(counted(pairs.length, "horse has", "horses have"))} width and length of both front and hind feet; fewer than ${settings.minimumHorses} give no comparison.`;
    return { kind: "not_enough_data", id, question, reason };
  }
  const mean = meanInterval(pairs, { level: settings.level });
  const both = rows.filter((row) => row.frontIndex !== null && row.hindIndex !== null);
  const medians = {
    front: describe(both.map((row) => row.frontIndex)).median,
    hind: describe(both.map((row) => row.hindIndex)).median,
  };
  const taken = `mean over visits, ${stageWords[stage ?? "none"]}`;
  const rounder = pairs.filter((difference) => difference > 0).length;
  const limits =
    mean.lower === null || mean.upper === null
      ? ""
      : `, ${levelText(settings.level)} interval ${signed(mean.lower)} to ${signed(mean.upper)}`;
  return {
    kind: "answer",
    id,
    question,
    sentence: `In ${rounder} of ${counted(pairs.length, "horse")} the front feet were wider for their length than the hind feet; width over length differed by ${signed(mean.estimate ?? 0)} on average${limits}.`,
    tables: [],
    charts: [frontHindShapeChart(rows, { medians, taken })],
    cautions: [
      "Measures before and after trimming are never put together; a trim changes the shape.",
      "A horse on the other side of the line may be an odd foot or a label mixed up: look before concluding.",
    ],
    method: {
      unit: "a horse",
      n: pairs.length,
      missing: rows.length - pairs.length,
      text: `Shape index: hoof width over length of the ground surface. ${taken.slice(0, 1).toUpperCase()}${taken.slice(1)}; fore less hind within each horse; mean over horses, Student's t limits. Horses and ponies only.`,
      links: ["frontHindShape", "hoofShape", "meanInterval"],
    },
  };
}

function signed(value: number): string {
  return `${value < 0 ? "−" : "+"}${Math.abs(value).toFixed(3)}`;
}

/** Stages are never pooled; the one with most horses is used. */
function mostUsedStage(rows: readonly FrontHindShape[]): FrontHindShape["stage"] {
  const counts = [...grouped(rows, (row) => row.stage)].map(([stage, of]) => ({
    stage,
    horses: new Set(of.map((row) => row.horseId)).size,
  }));
  counts.sort((a, b) => b.horses - a.horses || ((a.stage ?? "") < (b.stage ?? "") ? -1 : 1));
  return counts[0]?.stage ?? null;
}

function perHorse(rows: readonly FrontHindShape[]): FrontHindRow[] {
  const mean = (values: readonly (number | null)[]) => (values.some((value) => value !== null) ? describe(values).mean : null);
  return [...grouped(rows, (row) => row.horseId)]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([horseId, of]) => ({
      horseId,
      frontIndex: mean(of.map((row) => row.foreShapeIndex)),
      hindIndex: mean(of.map((row) => row.hindShapeIndex)),
    }));
}
