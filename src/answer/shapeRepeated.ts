import type { Table } from "../chart/Table.js";
import { repeatedMeasures } from "../derive/repeatedMeasures.js";
import { repeatedTracings } from "../derive/repeatedTracings.js";
import { shapeDefinitions } from "../derive/shapeDefinitions.js";
import { tracedOutlines } from "../derive/tracedOutlines.js";
import { describedOutlines, type OutlineDescription } from "../estimate/describedOutlines.js";
import { type MeasureRepeatability, shapeRepeatability } from "../estimate/shapeRepeatability.js";
import { minimumDetectableChange } from "../estimate/minimumDetectableChange.js";
import { standardErrorOfMeasurement } from "../estimate/standardErrorOfMeasurement.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { definitionsTable } from "./definitionsTable.js";
import { capital } from "../chart/parts/capital.js";
import { counted } from "./words/counted.js";
import { levelText } from "../chart/parts/levelText.js";

const { id, question } = asked("shape-repeated");
/** Feet measured twice below which an error of measurement is hardly known. */
const FEWEST_FEET = 10;
const traced = [
  ["shapeIndex", "Width over length"],
  ["toeTaper", "Width near the toe over greatest width"],
  ["areaAsymmetry", "Outer less inner area over the whole"],
  ["circularity", "Circularity"],
] as const;

/** Repeatability of every measure of shape from feet measured or traced twice on one day. Unit: a foot measured twice. */
export function shapeRepeated(study: Study): Answer | NotEnoughData {
  const { level } = study.settings;
  const repeats = repeatedMeasures(study.visits);
  const found = shapeRepeatability(repeats, { level });
  const feet = Math.max(0, ...found.map((of) => of.feet));
  if (feet < FEWEST_FEET) {
    const reason = `${capital(counted(feet, "foot was", "feet were"))} measured by two observers on one day; fewer than ${FEWEST_FEET} tell no error of measurement. Let two people measure the same feet before the trim, without seeing each other's readings.`;
    return { kind: "not_enough_data", id, question, reason };
  }
  const named = found.filter(({ measure }) => measure === "toeAngleDeg" || measure === "shapeIndex" || measure === "toeLengthMm");
  const horses = Math.max(...found.map((of) => of.horses));
  return {
    kind: "answer",
    id,
    question,
    sentence: `From ${counted(feet, "foot", "feet")} measured by two observers, a change between two readings is more than reading error (${levelText(level)}) ${named.map(changeWords).join(", ")}.`,
    tables: [
      measuresTable(found),
      ...tracingsTable(describedPairs(study), level),
      definitionsTable(found.map(({ measure }) => measure)),
    ],
    charts: [],
    cautions: [
      "A change smaller than the smallest detectable one is not flagged anywhere in this study; a larger one is real, which does not say that it matters.",
      "These are errors of these observers with these instruments; others read better or worse.",
    ],
    method: {
      unit: "a foot measured twice",
      n: feet,
      missing: 0,
      text: `Two observers on one day, before the trim or with no trim between. Intraclass correlation of form 2,1 (a steady difference between observers counts as disagreement); error of measurement: standard deviation within feet; smallest detectable change: that times the root of 2 and the normal quantile. ${counted(horses, "horse")}; several feet of one horse count as several, so limits are a little too narrow.`,
      links: [
        ...["repeatedMeasures", "shapeRepeatability", "intraclassCorrelation", "standardErrorOfMeasurement"],
        ...["minimumDetectableChange", "blandAltman"],
      ],
    },
  };
}

function changeWords({ measure, minimumDetectable }: MeasureRepeatability): string {
  const { title, unit, digits } = shapeDefinitions[measure];
  const words = unit === "deg" ? " degrees" : unit === null ? "" : ` ${unit}`;
  return `from ${minimumDetectable.toFixed(Math.max(1, digits))}${words} in ${title.toLowerCase()}`;
}

function measuresTable(found: readonly MeasureRepeatability[]): Table {
  return {
    caption: "Feet measured by two observers on one day",
    columns: [
      { name: "title", title: "Measure" },
      { name: "unit", title: "Unit" },
      { name: "feet", title: "Feet" },
      { name: "icc", title: "ICC 2,1", digits: 2 },
      { name: "iccLower", title: "From", digits: 2 },
      { name: "iccUpper", title: "To", digits: 2 },
      { name: "sem", title: "Error of measurement", digits: 3 },
      { name: "detectable", title: "Smallest detectable change", digits: 3 },
      { name: "bias", title: "First less second observer", digits: 3 },
    ],
    rows: found.map(({ measure, feet, icc, sem, minimumDetectable, agreement }) => ({
      title: shapeDefinitions[measure].title,
      unit: shapeDefinitions[measure].unit ?? "ratio",
      feet,
      ...{ icc: icc?.estimate ?? null, iccLower: icc?.lower ?? null, iccUpper: icc?.upper ?? null },
      ...{ sem: sem.estimate, detectable: minimumDetectable, bias: agreement?.bias.estimate ?? null },
    })),
  };
}

function describedPairs(study: Study): readonly (readonly [OutlineDescription, OutlineDescription])[] {
  return repeatedTracings(tracedOutlines(study, { mirrorLeft: true })).flatMap(({ first, second }) => {
    const { rows } = describedOutlines([first, second]);
    const [one, other] = rows;
    return one === undefined || other === undefined ? [] : [[one, other] as const];
  });
}

function tracingsTable(pairs: readonly (readonly [OutlineDescription, OutlineDescription])[], level: number): Table[] {
  if (pairs.length < 2) return [];
  return [
    {
      caption: "Feet traced twice on one day",
      columns: [
        { name: "title", title: "Measure of the outline" },
        { name: "feet", title: "Pairs of tracings" },
        { name: "sem", title: "Error of measurement", digits: 4 },
        { name: "detectable", title: "Smallest detectable change", digits: 4 },
      ],
      rows: traced.flatMap(([measure, title]) => {
        const values = pairs.map(([first, second]) => [first[measure], second[measure]]);
        if (!values.some((pair) => pair.every((value) => value !== null))) return [];
        const { estimate, n } = standardErrorOfMeasurement(values, { level });
        return [{ title, feet: n, sem: estimate, detectable: minimumDetectableChange(estimate, { level }) }];
      }),
    },
  ];
}
