import type { Table } from "../chart/Table.js";
import { asOfDate } from "../derive/asOfDate.js";
import { thrushCases } from "../derive/thrushCases.js";
import { type TimedVisit, type VisitPeriod, visitPeriods } from "../derive/visitPeriods.js";
import { clusterBootstrap } from "../estimate/clusterBootstrap.js";
import { EstimateError } from "../estimate/EstimateError.js";
import { fitLogistic, type LogisticFit } from "../estimate/fitLogistic.js";
import { seededRandom } from "../estimate/numeric/seededRandom.js";
import { dayNumber } from "../study/dayNumber.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { caseWords } from "./caseWords.js";
import { seedOfAnswers } from "./seedOfAnswers.js";
import { compared } from "./words/compared.js";
import { counted } from "./words/counted.js";
import { howSure } from "./words/howSure.js";
import { rounded } from "./words/rounded.js";
import { tooFewHorses } from "./words/tooFewHorses.js";
import { withInterval } from "./words/withInterval.js";

const { id, question } = asked("gaps-and-grades");
const PERIOD_DAYS = 7;
const BIN_DAYS = 42;

/** Whether visits come sooner after a visit with thrush, and the share of visits with thrush once weighted for that. Unit: a week of a horse; a visit. */
export function gapsAndGrades(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses, lostAfterDays } = study.settings;
  const lastDay = asOfDate(study);
  const visits = timedVisits(study);
  const again = [...grouped(visits, ({ horseId }) => horseId).values()].filter((own) => own.length > 1).length;
  const notEnough = (reason: string): NotEnoughData => ({ kind: "not_enough_data", id, question, reason });
  if (lastDay === null || again < minimumHorses)
    return notEnough(tooFewHorses(again, minimumHorses, "two graded visits", "tell nothing of gaps"));
  const weeks = visitPeriods(visits, { periodDays: PERIOD_DAYS, lostAfterDays, lastDay }).map((week) => ({
    ...week,
    weeksSince: week.daysSince / PERIOD_DAYS,
    weeksSinceSquared: (week.daysSince / PERIOD_DAYS) ** 2,
  }));
  const fits = fitted(weeks, level);
  if (fits instanceof EstimateError) return notEnough(`Visits cannot be set against the grade before: ${fits.message}`);
  const found = fits.withCase.coefficients.find(({ name }) => name === "lastCase")?.oddsRatio;
  if (found === undefined) return notEnough("Visits cannot be set against the grade before.");
  const ratio = { ...found, level };
  const weighted = weightedShares(visits, weeks, fits, level);
  const times = withInterval(ratio, (value) => rounded(value, 2));
  const which = compared(ratio, 1, {
    above: "Visits came sooner after one with thrush",
    below: "Visits came later after one with thrush",
    unclear: "Whether visits come sooner after one with thrush cannot be told",
  });
  return {
    kind: "answer",
    id,
    question,
    sentence: `${which}: the odds of a visit in any week were ${times} times those after a clear one. Thrush was found at ${howSure(weighted.plain)} of visits as they came, and at ${howSure(weighted.weighted)} once visits that were likelier to come count for less.`,
    tables: [gapsTable(weeks), binsTable(visits, lastDay)],
    charts: [],
    cautions: [
      "The weights allow for the time since the last visit and whether it found thrush, and for nothing else that makes a visit come.",
      "A horse is seen when it is due, lame or has lost a shoe; how often thrush is between visits was not seen.",
    ],
    method: {
      unit: "a week of a horse between visits, and a visit of a horse with a graded foot",
      n: weeks.length,
      missing: visits.length === 0 ? 0 : ungraded(study),
      text: `Case: ${caseWords(study.settings)}, any foot. Logistic regression of a visit in a week on weeks since the last one, their square, and thrush at it; horses as clusters. Each visit after a horse's first is weighted by the chance of it without regard to thrush over that with regard to it; first visits weigh 1. Limits of shares: resamples of whole horses, weights held, seed “${seedOfAnswers}”.`,
      links: ["visitPeriods", "fitLogistic", "clusterBootstrap"],
    },
  };
}

/** Visits of horses at which at least one foot was graded. */
function timedVisits(study: Study): TimedVisit[] {
  const graded = thrushCases(study).filter(({ thrush }) => thrush !== null);
  return [...grouped(graded, ({ horseId, visitDate }) => `${horseId}\n${visitDate}`).values()].flatMap((feet) => {
    const [first] = feet;
    if (first === undefined) return [];
    const { horseId, yardId, visitDate } = first;
    return [{ horseId, yardId, visitDate, thrush: feet.some(({ thrush }) => thrush) }];
  });
}

function ungraded(study: Study): number {
  const days = grouped(
    thrushCases(study).filter(({ missing }) => missing !== "specimen"),
    ({ horseId, visitDate }) => `${horseId}\n${visitDate}`,
  );
  return [...days.values()].filter((feet) => feet.every(({ thrush }) => thrush === null)).length;
}

type Week = VisitPeriod & { readonly weeksSince: number; readonly weeksSinceSquared: number };

interface Fits {
  readonly withCase: LogisticFit;
  readonly without: LogisticFit;
}

function fitted(rows: readonly Week[], level: number): Fits | EstimateError {
  const time = ["weeksSince", "weeksSinceSquared"];
  const fit = (terms: readonly string[]) => fitLogistic({ rows, outcome: "visited", terms, cluster: "horseId", level });
  try {
    return { withCase: fit([...time, "lastCase"]), without: fit(time) };
  } catch (fault) {
    if (fault instanceof EstimateError) return fault;
    throw fault;
  }
}

function chance({ coefficients }: LogisticFit, week: Week): number {
  const cells = week as unknown as Readonly<Record<string, number | boolean | null>>;
  const eta = coefficients.reduce(
    (sum, { name, estimate }) => sum + estimate * (name === "intercept" ? 1 : Number(cells[name])),
    0,
  );
  return 1 / (1 + Math.exp(-eta));
}

function weightedShares(visits: readonly TimedVisit[], weeks: readonly Week[], { withCase, without }: Fits, level: number) {
  const weights = new Map(
    weeks
      .filter(({ visited }) => visited)
      .map((week) => [`${week.horseId}\n${week.visitDate ?? ""}`, chance(without, week) / chance(withCase, week)]),
  );
  const rows = visits.map((visit) => ({
    horseId: visit.horseId,
    thrush: visit.thrush === true,
    weight: weights.get(`${visit.horseId}\n${visit.visitDate}`) ?? 1,
  }));
  const clusters = [...grouped(rows, ({ horseId }) => horseId).values()];
  const share = (weigh: (row: (typeof rows)[number]) => number) => {
    const result = clusterBootstrap(
      clusters,
      (drawn) => {
        const total = drawn.reduce((sum, row) => sum + weigh(row), 0);
        return drawn.reduce((sum, row) => sum + (row.thrush ? weigh(row) : 0), 0) / total;
      },
      { random: seededRandom(seedOfAnswers), replicates: 1000, level },
    );
    return { ...result, estimate: Math.min(1, result.estimate ?? 0) };
  };
  return { plain: share(() => 1), weighted: share(({ weight }) => weight) };
}

function gapsTable(weeks: readonly Week[]): Table {
  const gaps = [true, false].map((lastCase) => {
    const of = weeks.filter((week) => week.lastCase === lastCase);
    const begun = of.filter(({ daysSince }) => daysSince === 0).length;
    const visited = of.filter((week) => week.visited);
    const within = (days: number) => visited.filter(({ daysSince }) => daysSince + PERIOD_DAYS <= days).length;
    return {
      after: lastCase ? "thrush" : "no thrush",
      gaps: begun,
      visited: visited.length,
      four: within(28),
      six: within(42),
      eight: within(56),
    };
  });
  return {
    caption: "Next visit after a visit with thrush and without",
    columns: [
      { name: "after", title: "Visit before" },
      { name: "gaps", title: "Gaps of a week or more" },
      { name: "visited", title: "Seen again" },
      { name: "four", title: "Within 4 weeks" },
      { name: "six", title: "Within 6 weeks" },
      { name: "eight", title: "Within 8 weeks" },
    ],
    rows: gaps,
  };
}

/** Stretches of six weeks from each horse's first visit on, by how many visits fell into them. */
function binsTable(visits: readonly TimedVisit[], lastDay: string): Table {
  const counts = [0, 0, 0];
  const day = (date: string) => dayNumber(date) ?? 0;
  for (const own of grouped(visits, ({ horseId }) => horseId).values()) {
    const days = own.map(({ visitDate }) => day(visitDate));
    const first = Math.min(...days);
    const bins = Math.floor((day(lastDay) - first + 1) / BIN_DAYS);
    for (let bin = 0; bin < bins; bin += 1) {
      const inside = days.filter((each) => Math.floor((each - first) / BIN_DAYS) === bin).length;
      counts[Math.min(2, inside)] = (counts[Math.min(2, inside)] ?? 0) + 1;
    }
  }
  const total = counts.reduce((sum, count) => sum + count, 0);
  return {
    caption: `Stretches of ${BIN_DAYS} days of a horse, from its first visit on, by visits in them (${counted(total, "stretch", "stretches")})`,
    columns: [
      { name: "visits", title: "Visits" },
      { name: "stretches", title: "Stretches" },
      { name: "share", title: "Share", percent: true },
    ],
    rows: ["none", "one", "two or more"].map((words, i) => ({
      visits: words,
      stretches: counts[i] ?? 0,
      share: total === 0 ? null : (counts[i] ?? 0) / total,
    })),
  };
}
