import type { Table } from "../chart/Table.js";
import { horseCases } from "../derive/horseCases.js";
import { thrushCases } from "../derive/thrushCases.js";
import { thrushChanges } from "../derive/thrushChanges.js";
import { casePersistence } from "../estimate/casePersistence.js";
import { fitConditionalLogistic } from "../estimate/fitConditionalLogistic.js";
import { intervalCensoredIncidence } from "../estimate/intervalCensoredIncidence.js";
import type { ObservedGap } from "../estimate/ObservedGap.js";
import { prevalence } from "../estimate/prevalence.js";
import { dayNumber } from "../study/dayNumber.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { capital } from "../chart/parts/capital.js";
import { caseWords } from "./caseWords.js";
import { asked } from "./climate/asked.js";
import { fewestYards } from "./climate/fewestYards.js";
import { counted } from "./words/counted.js";
import { whenPossible } from "./climate/whenPossible.js";
import { howSure } from "./words/howSure.js";
import { tooFewHorses } from "./words/tooFewHorses.js";
import { certain } from "./climate/certain.js";
import { levelText } from "../chart/parts/levelText.js";

const { id, question, notEnough } = asked("study-description");

/** Prevalence by level, incidence with onset between visits, persistence, severity, site, front against hind. Unit: as each line says. */
export function studyDescription(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses } = study.settings;
  const feet = thrushCases(study).filter(({ missing }) => missing !== "specimen");
  const graded = feet.filter(({ thrush }) => thrush !== null);
  const horses = new Set(graded.map(({ horseId }) => horseId)).size;
  if (horses < minimumHorses) return notEnough(tooFewHorses(horses, minimumHorses, "a graded frog", "give no share"));
  const levels = prevalence(
    feet.map((row) => ({ case: row.thrush, horseId: row.horseId, yardId: row.yardId, visitDate: row.visitDate })),
    { level },
  );
  const parts = [levels.footVisit, levels.visit, levels.horse, levels.yard].filter((part) => part !== null);
  const interval = `${levelText(level)} interval`;
  return {
    kind: "answer",
    id,
    question,
    sentence: `${capital(howSure({ ...levels.footVisit, estimate: levels.footVisit.estimate ?? 0 }))} of the feet graded at visits had thrush (${caseWords(study.settings)}).`,
    tables: [
      {
        caption: `Prevalence of thrush (${caseWords(study.settings)}) by level`,
        columns: [
          { name: "unit", title: "Unit" },
          { name: "cases", title: "Cases" },
          { name: "n", title: "of" },
          { name: "missing", title: "Missing" },
          { name: "estimate", title: "Share", percent: true, digits: 1 },
          { name: "lower", title: `${interval}, from`, percent: true, digits: 1 },
          { name: "upper", title: "to", percent: true, digits: 1 },
          { name: "icc", title: "Intraclass correlation", digits: 3 },
          { name: "designEffect", title: "Design effect", digits: 2 },
          { name: "clusters", title: "Clusters" },
          { name: "method", title: "Method", below: "long" },
        ],
        rows: parts.map(
          ({ unit, cases, n, missing, estimate, lower, upper, icc, designEffect, clusters, clusteredBy, method }) => ({
            ...{ unit, cases, n, missing, estimate, lower, upper, icc, designEffect, method },
            clusters: clusteredBy === null ? null : counted(clusters, clusteredBy),
          }),
        ),
      },
      courses(study, interval),
      severity(graded),
      sites(graded),
      frontAgainstHind(graded, level, interval),
    ],
    charts: [],
    cautions: [
      "Prevalence under another case definition is not comparable; published figures differ tenfold between surveys.",
      "Incidence and persistence count what was found at visits: a foot may turn and turn back in between.",
    ],
    method: {
      unit: "a foot at a visit; the tables name others",
      n: graded.length,
      missing: feet.length - graded.length,
      text: `Case: ${caseWords(study.settings)}. A new case began at some time between two visits; the rate is the maximum-likelihood constant hazard with each onset anywhere in its gap, never dated to the later visit. Front against hind: conditional logistic regression within a horse's visit.`,
      links: ["prevalence", "intervalCensoredIncidence", "casePersistence", "fitConditionalLogistic", "thrushChanges"],
    },
  };
}

/** Horse gaps that begin clear, and foot gaps that begin with a case. */
function courses(study: Study, interval: string): Table {
  const { level } = study.settings;
  const cases = thrushCases(study);
  const yards = new Set(cases.flatMap(({ yardId }) => yardId ?? [])).size;
  const clusterOf = (row: { readonly yardId: string | null; readonly horseId: string }) =>
    yards >= fewestYards ? (row.yardId ?? row.horseId) : row.horseId;
  const known = horseCases(cases).filter(({ thrush }) => thrush !== null);
  const begins = [...grouped(known, ({ horseId }) => horseId).values()].flatMap((list) =>
    list.slice(1).flatMap((later, place): ObservedGap[] => {
      const earlier = certain(list[place]);
      const days = certain(dayNumber(later.visitDate)) - certain(dayNumber(earlier.visitDate));
      return earlier.thrush === true ? [] : [{ days, event: later.thrush, cluster: clusterOf(later) }];
    }),
  );
  const changes = thrushChanges(cases);
  const newFeet = changes
    .filter(({ change }) => change === "new" || change === "clear")
    .map((row): ObservedGap => ({ days: row.days, event: row.change === "new", cluster: clusterOf(row) }));
  const caseFeet = changes
    .filter(({ change }) => change === "still" || change === "cleared")
    .map((row): ObservedGap => ({ days: row.days, event: row.change === "cleared", cluster: clusterOf(row) }));
  const line = (
    what: string,
    make: () => {
      readonly estimate: number | null;
      readonly lower: number | null;
      readonly upper: number | null;
      readonly n: number;
      readonly events: number;
      readonly missing: number;
      readonly method: string;
    },
  ) => {
    const found = whenPossible(make);
    if (typeof found === "string")
      return { what, estimate: null, lower: null, upper: null, events: null, n: null, missing: null, method: found };
    const { estimate, lower, upper, n, events, missing, method } = found;
    return { what, estimate, lower, upper, events, n, missing, method };
  };
  return {
    caption: "Coming and staying",
    columns: [
      { name: "what", title: "What" },
      { name: "estimate", title: "Estimate", digits: 2 },
      { name: "lower", title: `${interval}, from`, digits: 2 },
      { name: "upper", title: "to", digits: 2 },
      { name: "events", title: "Events" },
      { name: "n", title: "Gaps between visits" },
      { name: "missing", title: "Missing" },
      { name: "method", title: "Method", below: "long" },
    ],
    rows: [
      line("New cases per 100 horse-months (horse: all its graded feet clear before, any a case after)", () =>
        intervalCensoredIncidence(begins, { level }),
      ),
      line("New cases per 100 foot-months", () => intervalCensoredIncidence(newFeet, { level })),
      line("Clearing of cases per 100 foot-months", () => intervalCensoredIncidence(caseFeet, { level })),
      line("Share of case feet still cases at the next visit", () => {
        const { share } = casePersistence(caseFeet, { level });
        return { ...share, events: share.cases };
      }),
    ],
  };
}

function severity(graded: ReturnType<typeof thrushCases>): Table {
  return {
    caption: "Severity mix (project scale)",
    columns: [
      { name: "grade", title: "Grade" },
      { name: "feet", title: "Feet at visits" },
      { name: "share", title: "Share", percent: true, digits: 1 },
      { name: "horses", title: "Horses" },
    ],
    rows: [0, 1, 2, 3].map((grade) => {
      const list = graded.filter(({ thrushGrade }) => thrushGrade === grade);
      return {
        grade,
        feet: list.length,
        share: list.length / graded.length,
        horses: new Set(list.map(({ horseId }) => horseId)).size,
      };
    }),
  };
}

function sites(graded: ReturnType<typeof thrushCases>): Table {
  const cases = graded.filter(({ thrush }) => thrush === true);
  const words = { central_sulcus: "central sulcus", medial_groove: "medial groove", lateral_groove: "lateral groove" } as const;
  const line = (site: string, list: typeof cases) => ({
    site,
    feet: list.length,
    share: cases.length === 0 ? null : list.length / cases.length,
  });
  return {
    caption: "Clefts affected in case feet (several may be named)",
    columns: [
      { name: "site", title: "Cleft" },
      { name: "feet", title: "Case feet" },
      { name: "share", title: "of all case feet", percent: true },
    ],
    rows: [
      ...(Object.keys(words) as (keyof typeof words)[]).map((site) =>
        line(
          words[site],
          cases.filter(({ thrushSite }) => thrushSite?.includes(site) === true),
        ),
      ),
      line(
        "not recorded",
        cases.filter(({ thrushSite }) => thrushSite === null),
      ),
    ],
  };
}

function frontAgainstHind(graded: ReturnType<typeof thrushCases>, level: number, interval: string): Table {
  const rows = graded.map((row) => ({ ...row, hind: row.end === "hind", look: `${row.horseId} ${row.visitDate}` }));
  const fit = whenPossible(() =>
    fitConditionalLogistic({ rows, outcome: "thrush", terms: ["hind"], strata: "look", cluster: "horseId", level }),
  );
  const found = typeof fit === "string" ? null : certain(fit.coefficients[0]).oddsRatio;
  return {
    caption: "Hind against front foot of the same horse at the same visit",
    columns: [
      { name: "estimate", title: "Odds ratio", digits: 2 },
      { name: "lower", title: `${interval}, from`, digits: 2 },
      { name: "upper", title: "to", digits: 2 },
      { name: "looks", title: "Visits with both clear and case feet" },
      { name: "feet", title: "Feet in them" },
      { name: "note", title: "Method", below: "long" },
    ],
    rows: [
      {
        estimate: found?.estimate ?? null,
        lower: found?.lower ?? null,
        upper: found?.upper ?? null,
        looks: typeof fit === "string" ? null : fit.strata,
        feet: typeof fit === "string" ? null : fit.n,
        note: typeof fit === "string" ? fit : fit.method,
      },
    ],
  };
}
