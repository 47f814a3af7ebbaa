import { forestChart } from "../chart/forestChart.js";
import { type RawShare, prevalenceCurveChart } from "../chart/prevalenceCurveChart.js";
import type { Table } from "../chart/Table.js";
import { attributableFraction } from "../estimate/attributableFraction.js";
import { describe } from "../estimate/describe.js";
import { exposureEffects } from "../estimate/exposureEffects.js";
import type { ExposureEffect } from "../estimate/ExposureEffect.js";
import { prevalenceCurve, type PrevalenceCurve } from "../estimate/prevalenceCurve.js";
import { seededRandom } from "../estimate/numeric/seededRandom.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { caseWords } from "./caseWords.js";
import { asked, climateSeed, rainCautions } from "./climate/asked.js";
import { type Declared, declaredModel } from "./climate/declaredModel.js";
import { fewestYards } from "./climate/fewestYards.js";
import { valueOf } from "./climate/valueOf.js";
import { effectTable } from "./climate/effectTable.js";
import { heldEqualWords } from "./climate/heldEqualWords.js";
import { exposureWords } from "./climate/exposureWords.js";
import { stepWords } from "./climate/stepWords.js";
import { oddsWords } from "./climate/oddsWords.js";
import { pWords } from "./climate/pWords.js";
import { whenPossible } from "./climate/whenPossible.js";
import { certain } from "./climate/certain.js";
import { points } from "./words/points.js";
import { rounded } from "./words/rounded.js";
import { levelText } from "../chart/parts/levelText.js";

const { id, question, notEnough } = asked("rain-effect");

/** The declared effect beside the crude one: odds ratios, prevalence curve, difference of prevalence, attributable fraction. Unit: a foot at a visit. */
export function rainEffect(study: Study): Answer | NotEnoughData {
  const declared = declaredModel(study);
  if (typeof declared === "string") return notEnough(declared);
  const { settings } = study;
  const { rows, model, leftOut } = declared;
  const { primaryExposure, exposurePer, level } = settings;
  const used = rows.filter((row) => row.case !== null && valueOf(row, primaryExposure) !== null && row.yardId !== null);
  const { q1, q3, min, max } = describe(used.map((row) => valueOf(row, primaryExposure) as number));
  const between = [Math.floor(q1), Math.max(Math.ceil(q3), Math.floor(q1) + 1)] as const;
  const effects = exposureEffects(model, { stratum: "monthOfYear", between });
  const primary = certain(effects.find(({ name, contrast }) => name === "Mixed model" && !contrast.includes("against")));
  if (primary.estimate === null) return notEnough(`The declared model has no estimate: ${primary.note ?? ""}`);
  const at = Array.from({ length: 21 }, (_, place) => min + ((max - min) * place) / 20);
  const curve = whenPossible(() => prevalenceCurve(model, { at, between }));
  const words = exposureWords(primaryExposure);
  const unit = words.endsWith("(mm)") ? " mm" : "";
  const tables = [
    effectTable(
      `Effect of ${words} on thrush (${caseWords(settings)})`,
      effects.map((effect) => ({ ...effect, kind: effect === primary ? "declared" : "to compare" })),
      level,
    ),
    population(declared, curve, between, words, level),
  ];
  const difference = typeof curve === "string" ? null : curve.difference;
  return {
    kind: "answer",
    id,
    question,
    sentence: `The odds of thrush were ${oddsWords(primary)} times as high per ${stepWords(primaryExposure, exposurePer)}, p ${pWords(primary.p)}, with ${heldEqualWords(primary.adjustedFor)} held equal; crude ${oddsWords(certain(effects[0]))}.`,
    tables,
    charts: [
      forestChart(
        effects.map((effect) => forestRow(effect, effect === primary, unit)),
        {
          title: `From crude ${oddsAlone(certain(effects[0]))} to adjusted ${oddsAlone(primary)}`,
          ratioTitle: `Odds ratio of thrush`,
          level,
          unit: "feet at visits",
          explained: [
            `Per ${stepWords(primaryExposure, exposurePer)}, or as the line says. Crude lines take feet as independent and are too narrow.`,
          ],
        },
      ),
      ...(typeof curve === "string"
        ? []
        : [
            prevalenceCurveChart(curve.points, rawShares(used, primaryExposure), {
              title:
                typeof difference?.estimate !== "number"
                  ? "Prevalence over rain"
                  : `Share of feet with thrush: ${points(difference.estimate)} from ${between[0]} to ${between[1]}${unit}`,
              exposureTitle: words.slice(0, 1).toUpperCase() + words.slice(1),
              level,
              caseDefinition: caseWords(settings),
            }),
          ]),
    ],
    cautions: [...rainCautions, ...leftOut.map((why) => `Declared and not held equal: ${why}.`)],
    method: {
      unit: "a foot at a visit, in its horse, in its yard",
      n: primary.n ?? 0,
      missing: rows.length - (primary.n ?? 0),
      text: `Case: ${caseWords(settings)}. ${primary.method}. ${primary.note ?? ""} The stratified lines hold the month of the year equal and compare visits above the median with the others.`.trim(),
      links: ["exposureEffects", "effectOfExposure", "prevalenceCurve", "attributableFraction", "mantelHaenszel"],
    },
  };
}

function oddsAlone({ estimate }: ExposureEffect): string {
  return estimate === null ? "(no estimate)" : rounded(estimate, 2);
}

function forestRow(effect: ExposureEffect, primary: boolean, unit: string) {
  const { estimate, lower, upper, n } = effect;
  return { label: labelOf(effect, unit), estimate, lower, upper, n, primary };
}

/** Short enough for the side of a chart; the table has the whole of it. */
function labelOf({ name, contrast }: ExposureEffect, unit: string): string {
  const short = name.replace(/, high against low$/, "").replace("monthOfYear", "month of the year");
  const [, cut] = / above ([\d.]+) against /.exec(contrast) ?? [];
  if (cut !== undefined) return `${short}: above ${Math.round(Number(cut))}${unit}`;
  const [, to, from] = / ([\d.]+) against ([\d.]+)$/.exec(contrast) ?? [];
  return to === undefined || from === undefined ? short : `${short}: ${to} against ${from}${unit}`;
}

/** Difference of prevalence and attributable fraction. */
function population(
  declared: Declared,
  curve: PrevalenceCurve | string,
  between: readonly [number, number],
  words: string,
  level: number,
): Table {
  const { rows, model } = declared;
  const cut = describe(rows.map((row) => valueOf(row, model.exposure) as number | null)).median;
  const yards = new Set(rows.map(({ yardId }) => yardId)).size;
  const fraction = whenPossible(() =>
    attributableFraction(
      rows.map((row) => {
        const amount = valueOf(row, model.exposure) as number | null;
        return {
          case: row.case,
          exposed: amount === null ? null : amount > cut,
          cluster: yards < fewestYards ? row.horseId : (row.yardId ?? row.horseId),
          stratum: String(row.monthOfYear),
        };
      }),
      { random: seededRandom(climateSeed), replicates: 500, level },
    ),
  );
  const blank = { estimate: null, lower: null, upper: null, n: null };
  const line = (
    what: string,
    of: { readonly estimate: number | null; readonly lower: number | null; readonly upper: number | null } | null,
    n: number | null,
    note: string,
  ) => (of === null ? { what, ...blank, note } : { what, estimate: of.estimate, lower: of.lower, upper: of.upper, n, note });
  return {
    caption: `What it means for the population: ${words}`,
    columns: [
      { name: "what", title: "What" },
      { name: "estimate", title: "Estimate", percent: true, digits: 1 },
      { name: "lower", title: `${levelText(level)} interval, from`, percent: true, digits: 1 },
      { name: "upper", title: "to", percent: true, digits: 1 },
      { name: "n", title: "Feet" },
      { name: "note", title: "Method", below: "long" },
    ],
    rows: [
      typeof curve === "string"
        ? line(`Difference of prevalence, ${between[1]} against ${between[0]}`, null, null, curve)
        : line(
            `Difference of prevalence, ${between[1]} against ${between[0]}`,
            curve.difference,
            curve.n,
            curve.difference?.method ?? "",
          ),
      typeof fraction === "string"
        ? line("Share of cases that go with rain above the median", null, null, fraction)
        : line(
            `Share of all cases that go with exposure above ${cut.toFixed(0)}`,
            fraction.population,
            fraction.n,
            "Mantel-Haenszel risk ratio by month, 500 resamples. It would be the share that could be spared only if rain above the median raised the risk itself, stood for nothing else, and could be had away",
          ),
    ],
  };
}

/** Tenths of the feet by exposure. */
function rawShares(rows: Declared["rows"], column: string): RawShare[] {
  const sorted = rows
    .map((row) => ({ exposure: valueOf(row, column) as number, found: row.case === true }))
    .sort((a, b) => a.exposure - b.exposure);
  return Array.from({ length: 10 }, (_, tenth) =>
    sorted.slice(Math.floor((tenth * sorted.length) / 10), Math.floor(((tenth + 1) * sorted.length) / 10)),
  )
    .filter((part) => part.length > 0)
    .map((part) => ({
      exposure: part.reduce((sum, row) => sum + row.exposure, 0) / part.length,
      share: part.filter(({ found }) => found).length / part.length,
      n: part.length,
    }));
}
