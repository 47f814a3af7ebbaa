import type { Table } from "../chart/Table.js";
import { asOfDate } from "../derive/asOfDate.js";
import { atLastVisit } from "../derive/atLastVisit.js";
import type { FootCase } from "../derive/FootCase.js";
import { thrushCases } from "../derive/thrushCases.js";
import { clusterCorrelation } from "../estimate/clusterCorrelation.js";
import { prevalence } from "../estimate/prevalence.js";
import type { PrevalenceEstimate } from "../estimate/PrevalenceEstimate.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { caseWords } from "./caseWords.js";
import { levelText } from "../chart/parts/levelText.js";
import { counted } from "./words/counted.js";
import { howSure } from "./words/howSure.js";
import { rounded } from "./words/rounded.js";
import { tooFewHorses } from "./words/tooFewHorses.js";

const { id, question } = asked("prevalence-by-level");

/** Prevalence counted in feet, visits, horses and yards, over the study and at the last visit, and how alike members of a cluster are. */
export function prevalenceByLevel(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses } = study.settings;
  const cases = thrushCases(study).filter(({ missing }) => missing !== "specimen");
  const graded = cases.filter(({ thrush }) => thrush !== null);
  const horses = new Set(graded.map(({ horseId }) => horseId)).size;
  if (horses < minimumHorses) {
    return {
      kind: "not_enough_data",
      id,
      question,
      reason: tooFewHorses(horses, minimumHorses, "a graded frog", "give no share"),
    };
  }
  const found = (feet: readonly FootCase[]) =>
    prevalence(
      feet.map((row) => ({ ...row, case: row.thrush })),
      { level },
    );
  const all = found(cases);
  const last = found(atLastVisit(cases, asOfDate(study)));
  const foot = { ...all.footVisit, estimate: all.footVisit.estimate ?? 0 };
  return {
    kind: "answer",
    id,
    question,
    sentence: `Thrush was found at ${howSure(foot)} of graded looks at a foot and in ${countOf(all.horse)} horses at one time or another.${designWords(foot)}`,
    tables: [
      levelsTable("Over the whole study, counted four ways", [all.footVisit, all.visit, all.horse, all.yard], level),
      levelsTable("At the last visit of each horse", [last.footVisit, last.horse, last.yard], level),
      likenessTable(graded),
    ],
    charts: [],
    cautions: [
      "Each way of counting answers another question: do not set the share of horses beside a share of feet.",
      "A horse seen more often has more chances to be found with thrush, so the share of horses over the study grows with the visits.",
      "The grade is a scale of this project; do not set these shares beside ones found with another definition.",
    ],
    method: {
      unit: "a foot at a visit, a visit, a horse, a yard",
      n: graded.length,
      missing: cases.length - graded.length,
      text: `Case: ${caseWords(study.settings)}; a visit, horse or yard is a case when any of its feet is. ${foot.method}.${foot.note === null ? "" : ` ${foot.note}`} Likeness: analysis-of-variance intraclass correlation; the design effect is how many times more looks are needed than if all were independent.`,
      links: ["prevalence", "clusteredProportion", "clusterCorrelation"],
    },
  };
}

function countOf({ cases, n }: PrevalenceEstimate): string {
  return `${cases} of ${n}`;
}

function designWords({ designEffect, effectiveN, n }: PrevalenceEstimate): string {
  if (designEffect === null || effectiveN === null) return "";
  return ` The ${counted(n, "look")} say as much as ${Math.round(effectiveN)} independent ones would, a design effect of ${rounded(designEffect, 1)}.`;
}

const unitWords = {
  "foot-visit": "looks at a foot",
  visit: "visits, any foot",
  horse: "horses, any foot",
  yard: "yards, any horse",
};

function levelsTable(caption: string, estimates: readonly (PrevalenceEstimate | null)[], level: number): Table {
  return {
    caption: `${caption}, ${levelText(level)} limits`,
    columns: [
      { name: "unit", title: "Counted in" },
      { name: "cases", title: "With thrush" },
      { name: "n", title: "Graded" },
      { name: "missing", title: "Not graded" },
      { name: "estimate", title: "Share", percent: true, digits: 1 },
      { name: "lower", title: "From", percent: true, digits: 1 },
      { name: "upper", title: "To", percent: true, digits: 1 },
      { name: "clusteredBy", title: "Clusters" },
      { name: "designEffect", title: "Design effect", digits: 2 },
    ],
    rows: estimates
      .filter((row) => row !== null)
      .map(({ unit, cases, n, missing, estimate, lower, upper, clusteredBy, clusters, designEffect }) => ({
        ...{ unit: unitWords[unit], cases, n, missing, estimate, lower, upper, designEffect },
        clusteredBy: clusteredBy === null ? null : counted(clusters, clusteredBy),
      })),
  };
}

function likenessTable(graded: readonly FootCase[]): Table {
  const horseDay = ({ horseId, visitDate }: FootCase) => `${horseId}\n${visitDate}`;
  const kinds: [string, readonly FootCase[], (row: FootCase) => string][] = [
    ["feet of one horse at one visit", graded, horseDay],
    ["looks at one foot, over time", graded, ({ horseId, foot }) => `${horseId}\n${foot}`],
    ["looks at one horse, all feet and visits", graded, ({ horseId }) => horseId],
    ["looks at one yard", graded.filter(({ yardId }) => yardId !== null), ({ yardId }) => yardId ?? ""],
  ];
  const rows = kinds.flatMap(([of, looks, keyOf]) => {
    if (looks.length === 0) return [];
    const clusters = [...grouped(looks, keyOf).values()].map((own) => ({
      cases: own.filter(({ thrush }) => thrush).length,
      n: own.length,
    }));
    const { icc, clusters: count, n } = clusterCorrelation(clusters);
    return [{ of, clusters: count, size: n / count, icc }];
  });
  return {
    caption: "How alike looks are that share something",
    columns: [
      { name: "of", title: "Looks that share" },
      { name: "clusters", title: "Clusters" },
      { name: "size", title: "Looks each", digits: 1 },
      { name: "icc", title: "Intraclass correlation", digits: 3 },
    ],
    rows,
  };
}
