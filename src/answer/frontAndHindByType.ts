import type { Table } from "../chart/Table.js";
import { type FrontHindContrast, frontHindContrasts } from "../derive/frontHindContrasts.js";
import { mostUsedStage } from "../derive/mostUsedStage.js";
import { shapeDefinitions } from "../derive/shapeDefinitions.js";
import type { ShapeMeasure } from "../derive/ShapeMeasure.js";
import { type MeanInterval, meanInterval } from "../estimate/meanInterval.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { definitionsTable } from "./definitionsTable.js";
import { capital } from "../chart/parts/capital.js";
import { counted } from "./words/counted.js";
import { stageInWords } from "./words/stageInWords.js";
import { levelText } from "../chart/parts/levelText.js";

const { id, question } = asked("front-and-hind-by-type");
const measures = Object.keys(shapeDefinitions) as ShapeMeasure[];

/** One value a horse: mean of its fore feet less mean of its hind feet, over the days both were measured. */
interface HorseContrast extends Pick<FrontHindContrast, "horseId" | "type" | "ageClass" | "measure"> {
  readonly difference: number;
}

interface Contrast {
  readonly measure: ShapeMeasure;
  readonly group: string;
  readonly horses: number;
  readonly mean: MeanInterval;
}

/** Front less hind within horses for every measure, and for the shape index by type and by age class. Unit: a horse. */
export function frontAndHindByType(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses } = study.settings;
  const rows = frontHindContrasts(study, measures).filter(({ species }) => !["donkey", "mule"].includes(species ?? "horse"));
  const both = rows.filter(({ difference }) => difference !== null);
  const stage = mostUsedStage(both);
  const horses = perHorse(both.filter((row) => row.stage === stage));
  const all = [...grouped(horses, ({ measure }) => measure)].map(([measure, of]) => contrast(measure, "all", of, level));
  const index = horses.filter(({ measure }) => measure === "shapeIndex");
  const whole = all.find(({ measure }) => measure === "shapeIndex");
  if (whole === undefined || whole.horses < minimumHorses) {
    const reason = `${capital(counted(whole?.horses ?? 0, "horse has", "horses have"))} width and length of both front and hind feet at one stage; fewer than ${minimumHorses} give no comparison.`;
    return { kind: "not_enough_data", id, question, reason };
  }
  const parted = (of: (row: HorseContrast) => string) =>
    [...grouped(index, of)].sort(([a], [b]) => (a < b ? -1 : 1)).map(([group, own]) => contrast("shapeIndex", group, own, level));
  const types = parted(({ type }) => type ?? "type not recorded");
  const ages = parted(({ ageClass }) => ageClass ?? "age not known");
  return {
    kind: "answer",
    id,
    question,
    sentence: `Width over length was ${signed(whole.mean.estimate, 3)} larger in front than behind within ${counted(whole.horses, "horse")}${limits(whole.mean, 3)}; ${spreadWords(types, minimumHorses)}.`,
    tables: [
      contrastTable(
        "Front less hind within horses",
        "Measure",
        all,
        minimumHorses,
        ({ measure }) => shapeDefinitions[measure].title,
      ),
      contrastTable("Shape index, front less hind, by type", "Type", types, minimumHorses, ({ group }) => group),
      contrastTable("Shape index, front less hind, by age", "Age", ages, minimumHorses, ({ group }) => group),
      definitionsTable(all.map(({ measure }) => measure)),
    ],
    charts: [],
    cautions: [
      "Types and ages differ in much else: work, shoes, yards. A difference between them is not their doing.",
      "Age classes are never put together in a group by age; foals and yearlings do not have small grown feet.",
    ],
    method: {
      unit: "a horse",
      n: whole.horses,
      missing: new Set(rows.map(({ horseId }) => horseId)).size - whole.horses,
      text: `Measures ${stageInWords(stage)}. Mean of the fore feet less mean of the hind feet on each day, mean over the days of a horse in its last age class, mean over horses with Student's t limits at ${levelText(level)}. Groups of fewer than ${counted(minimumHorses, "horse")} are greyed. Age classes: foal, yearling, young (2 and 3), adult (4 to 14), aged (from 15). Horses and ponies only.`,
      links: ["frontHindContrasts", "meanInterval", "ageClass", "shapeDefinitions"],
    },
  };
}

function perHorse(rows: readonly FrontHindContrast[]): HorseContrast[] {
  return [...grouped(rows, ({ horseId, measure }) => `${horseId}\n${measure}`).values()].flatMap((history) => {
    const last = history.at(-1);
    if (last === undefined) return [];
    const { horseId, type, ageClass, measure } = last;
    const values = history.flatMap((row) => (row.ageClass === ageClass ? (row.difference ?? []) : []));
    return [{ horseId, type, ageClass, measure, difference: values.reduce((sum, value) => sum + value, 0) / values.length }];
  });
}

function contrast(measure: ShapeMeasure, group: string, rows: readonly HorseContrast[], level: number): Contrast {
  const mean = meanInterval(
    rows.map(({ difference }) => difference),
    { level },
  );
  return { measure, group, horses: rows.length, mean };
}

function signed(value: number | null, digits: number): string {
  const number = value ?? 0;
  return `${number < 0 ? "−" : ""}${Math.abs(number).toFixed(digits)}`;
}

function limits({ lower, upper, level }: MeanInterval, digits: number): string {
  if (lower === null || upper === null) return "";
  return ` (${levelText(level)} interval ${signed(lower, digits)} to ${signed(upper, digits)})`;
}

function spreadWords(types: readonly Contrast[], minimumHorses: number): string {
  const enough = types.filter(({ horses }) => horses >= minimumHorses);
  if (enough.length < 2) return "fewer than two types have enough horses to be set side by side";
  const sorted = [...enough].sort((a, b) => (a.mean.estimate ?? 0) - (b.mean.estimate ?? 0));
  const say = (of: Contrast | undefined) => (of === undefined ? "" : `${signed(of.mean.estimate, 3)} in ${of.group}`);
  return `by type from ${say(sorted[0])} to ${say(sorted.at(-1))}`;
}

function contrastTable(
  caption: string,
  heading: string,
  contrasts: readonly Contrast[],
  minimumHorses: number,
  name: (contrast: Contrast) => string,
): Table {
  const rows = contrasts.map((each) => {
    const digits = each.measure.endsWith("Mm") || each.measure.endsWith("Deg") ? 1 : 3;
    const number = (value: number | null) => (value === null ? null : signed(value, digits));
    const { estimate, lower, upper } = each.mean;
    return { name: name(each), horses: each.horses, estimate: number(estimate), lower: number(lower), upper: number(upper) };
  });
  return {
    caption,
    columns: [
      { name: "name", title: heading },
      { name: "horses", title: "Horses" },
      { name: "estimate", title: "Front less hind" },
      { name: "lower", title: "From" },
      { name: "upper", title: "To" },
    ],
    rows,
    greyed: contrasts.flatMap(({ horses }, row) =>
      horses < minimumHorses ? [{ row, reason: `fewer than ${minimumHorses} horses` }] : [],
    ),
  };
}
