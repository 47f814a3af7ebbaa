import { forestChart } from "../chart/forestChart.js";
import type { Chart } from "../chart/Chart.js";
import { observerDriftChart } from "../chart/observerDriftChart.js";
import type { Table } from "../chart/Table.js";
import { effectOfExposure } from "../estimate/effectOfExposure.js";
import type { ExposureEffect } from "../estimate/ExposureEffect.js";
import type { ExposureModel } from "../estimate/ExposureModel.js";
import { leaveOneOut } from "../estimate/leaveOneOut.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { caseWords } from "./caseWords.js";
import { asked, rainCautions } from "./climate/asked.js";
import { adjustedModel } from "./climate/adjustedModel.js";
import { declaredModel } from "./climate/declaredModel.js";
import { valueOf } from "./climate/valueOf.js";
import { boundsTable } from "./climate/boundsTable.js";
import { driftOf } from "./climate/driftOf.js";
import { effectTable } from "./climate/effectTable.js";
import { misclassified } from "./climate/misclassified.js";
import { stepWords } from "./climate/stepWords.js";
import { oddsWords } from "./climate/oddsWords.js";
import { weightedByTiming } from "./climate/weightedByTiming.js";
import { certain } from "./climate/certain.js";

const { id, question, notEnough } = asked("rain-sensitivity");

/** Sensitivity and specificity that are tried; common practice, no source: no thrush scale with published values is known. */
const tried = [
  { sensitivity: 0.9, specificity: 0.98 },
  { sensitivity: 0.8, specificity: 0.95 },
] as const;

/** The declared effect under other choices: case definition, misclassification, missing feet, timing of visits, yards left out, a control outcome, observers. */
export function rainSensitivity(study: Study): Answer | NotEnoughData {
  const declared = declaredModel(study);
  if (typeof declared === "string") return notEnough(declared);
  const { settings } = study;
  const { rows, model } = declared;
  const { level, primaryExposure, exposurePer, caseGrade } = settings;
  const gee: ExposureModel & typeof model = { ...model, method: "gee" };
  const named = (name: string, other: ExposureModel) => effectOfExposure(other, { name });
  const primary = named("Declared model", { ...model, method: "mixed" });
  if (primary.estimate === null) return notEnough(`The declared model has no estimate: ${primary.note ?? ""}`);
  const severe = caseGrade === 3 ? 2 : 3;
  const other = caseGrade === 1 ? 2 : severe;
  const regraded = rows.map((row) => ({ ...row, case: row.thrushGrade === null ? null : row.thrushGrade >= other }));
  const dark = rows.map((row) => ({
    ...row,
    dark: row.hornColour === null || row.hornColour === "striped" ? null : row.hornColour === "dark",
  }));
  const anomaly = primaryExposure.replace(/^rainMm/, "rainAnomalyMm");
  const wider = adjustedModel(settings, rows, [
    ...new Set([...settings.adjustFor.filter((code) => code !== "season"), "season_2", "interval", "shod"] as const),
  ]);
  const list: ExposureEffect[] = [
    primary,
    named("Estimating equations", gee),
    named(`Case at grade ${other} or more`, { ...gee, rows: regraded }),
    ...tried.map((values) => misclassified(gee, values)),
    named("Two waves of season, interval, shoeing too", { ...wider.model, method: "gee" }),
    ...(anomaly === primaryExposure || !rows.some((row) => valueOf(row, anomaly) !== null)
      ? []
      : [named("Rain less the usual of the month", { ...gee, exposure: anomaly })]),
    weightedByTiming(gee),
    named("Control outcome: dark horn", { ...gee, rows: dark, outcome: "dark" }),
  ];
  const without = leaveOneOut(gee);
  const [all, ...left] = without;
  const moved = left.filter(({ estimate }) => estimate !== null).map(({ estimate }) => certain(estimate));
  const drift = driftOf(study);
  const control = certain(list.at(-1));
  const charts: Chart[] = [
    forestChart(
      list.map((effect, place) => rowOf(effect, place === 0)),
      {
        title: "The effect under other choices",
        ratioTitle: `Odds ratio per ${stepWords(primaryExposure, exposurePer)}`,
        level,
        unit: "feet at visits",
      },
    ),
    forestChart(
      without.map((effect, place) => rowOf(effect, place === 0)),
      {
        title:
          moved.length === 0
            ? "Without each yard in turn"
            : `Without a yard the odds ratio lies between ${Math.min(...moved).toFixed(2)} and ${Math.max(...moved).toFixed(2)}`,
        ratioTitle: `Odds ratio per ${stepWords(primaryExposure, exposurePer)}`,
        level,
        unit: "feet at visits",
        filled: "all yards",
        explained: ["Estimating equations."],
      },
    ),
    ...(typeof drift === "string"
      ? []
      : [
          observerDriftChart(
            drift.quarters.map(({ quarter, n, kappa }) => ({
              quarter,
              n,
              estimate: kappa?.estimate ?? null,
              lower: kappa?.lower ?? null,
              upper: kappa?.upper ?? null,
            })),
            { title: `Agreement of observers ${drift.pair} by quarter`, level },
          ),
        ]),
  ];
  return {
    kind: "answer",
    id,
    question,
    sentence: `Under other choices the odds ratio lies between ${range(list.slice(0, -1))}${moved.length === 0 ? "" : `, without one yard between ${Math.min(...moved).toFixed(2)} and ${Math.max(...moved).toFixed(2)}`}; for the control outcome it is ${oddsWords(control)}.`,
    tables: [
      effectTable(
        "The effect under other choices",
        list.map((effect, place) => ({ ...effect, kind: place === 0 ? "declared" : "sensitivity" })),
        level,
      ),
      effectTable("Without each yard in turn", all === undefined ? [] : without, level),
      ...boundsTable(declared, level),
      ...(typeof drift === "string" ? [] : [driftTable(drift)]),
    ],
    charts,
    cautions: [
      ...rainCautions,
      "Rain should not change the colour of the horn: a control outcome that moves with rain points to something else that goes with it; one that does not move proves nothing.",
      ...(typeof drift === "string" ? [drift] : []),
    ],
    method: {
      unit: "a foot at a visit, in its horse, in its yard",
      n: certain(primary.n),
      missing: rows.length - certain(primary.n),
      text: `Case: ${caseWords(settings)}. Sensitivity and specificity are stated, not estimated. ${certain(list[1]).method}.`,
      links: [
        "fitMisclassifiedLogistic",
        "missingBounds",
        "visitTimingWeights",
        "leaveOneOut",
        "observerDrift",
        "effectOfExposure",
      ],
    },
  };
}

function rowOf({ name, estimate, lower, upper, n }: ExposureEffect, primary: boolean) {
  return { label: name, estimate, lower, upper, n, primary };
}

function range(effects: readonly ExposureEffect[]): string {
  const known = effects.flatMap(({ estimate }) => estimate ?? []);
  return `${Math.min(...known).toFixed(2)} and ${Math.max(...known).toFixed(2)}`;
}

function driftTable(drift: Exclude<ReturnType<typeof driftOf>, string>): Table {
  return {
    caption: `Agreement of observers ${drift.pair} (${drift.method})`,
    columns: [
      { name: "quarter", title: "Quarter" },
      { name: "n", title: "Feet scored by both" },
      { name: "horses", title: "Horses" },
      { name: "kappa", title: "Weighted kappa", digits: 2 },
      { name: "lower", title: "From", digits: 2 },
      { name: "upper", title: "To", digits: 2 },
      { name: "difference", title: "Second less first grade", digits: 2 },
      { name: "note", title: "Note", below: "long" },
    ],
    rows: [...drift.quarters, drift.all].map(({ quarter, n, horses, kappa, difference, note }) => ({
      ...{ quarter, n, horses, note },
      ...{
        kappa: kappa?.estimate ?? null,
        lower: kappa?.lower ?? null,
        upper: kappa?.upper ?? null,
        difference: difference?.estimate ?? null,
      },
    })),
  };
}
