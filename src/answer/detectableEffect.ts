import { cellText } from "../chart/cellText.js";
import { thrushCases } from "../derive/thrushCases.js";
import { refusedEffect } from "../estimate/climate/refusedEffect.js";
import { fitLogistic } from "../estimate/fitLogistic.js";
import { describe } from "../estimate/describe.js";
import { fitMixedLogistic } from "../estimate/fitMixedLogistic.js";
import { plantedTruth } from "../simulate/plantedTruth.js";
import type { SeasonDesign } from "../simulate/SeasonDesign.js";
import type { SeasonFoot } from "../simulate/simulateSeasonStudy.js";
import { dayNumber } from "../study/dayNumber.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { caseWords } from "./caseWords.js";
import { asked, climateSeed } from "./climate/asked.js";
import { fewestMonths } from "./climate/fewestMonths.js";
import { fewestYards } from "./climate/fewestYards.js";
import { whenPossible } from "./climate/whenPossible.js";
import { certain } from "./climate/certain.js";
import { counted } from "./words/counted.js";
import { howSure } from "./words/howSure.js";
import { tooFewHorses } from "./words/tooFewHorses.js";

const { id, question, notEnough } = asked("detectable-effect");

/** Another study than the one in hand, and how often to simulate. */
export interface DetectableOptions {
  /** Districts simulated for each effect; 10 when left out: enough for a first look, 500 for a protocol. */
  readonly runs?: number;
  /** Odds ratios per 10 mm of rain in 14 days to try; 1.05, 1.1 and 1.2 when left out. */
  readonly oddsRatios?: readonly number[];
  /** A planned study: what is left out is as in the study in hand. */
  readonly planned?: Partial<Pick<SeasonDesign, "yards" | "horsesPerYard" | "from" | "to" | "visitGapDays">>;
}

/** Power by simulation for a study with the yards, horses, visits and likeness of the one in hand, or of a planned one. Unit: a simulated study. */
export function detectableEffect(study: Study, options: DetectableOptions = {}): Answer | NotEnoughData {
  const { runs = 10, oddsRatios = [1.05, 1.1, 1.2] } = options;
  const design = designOf(study, options.planned);
  if (typeof design === "string") return notEnough(design);
  const { yards, horsesPerYard, visitGapDays, from, to, truth } = design;
  const alpha = 1 - study.settings.level;
  const lines = [1, ...oddsRatios].map((oddsRatio) => {
    const planted = { ...design, truth: { ...truth, rainPer10Mm14d: Math.log(oddsRatio) } };
    const [found] = plantedTruth(planted, oddsRatio, analyses, { runs, seed: climateSeed, alpha });
    return {
      oddsRatio,
      power: certain(found).found.estimate,
      lower: certain(found).found.lower,
      upper: certain(found).found.upper,
      runs,
      refused: certain(found).refused,
    };
  });
  const enough = lines.find(({ oddsRatio, power }) => oddsRatio > 1 && power >= 0.8);
  const size = `${yards} yards, ${horsesPerYard.toFixed(1)} horses a yard, visits about every ${visitGapDays} days from ${from} to ${to}`;
  return {
    kind: "answer",
    id,
    question,
    sentence: `With ${size}, ${enough === undefined ? `none of the odds ratios tried (${oddsRatios.join(", ")} per 10 mm) is found in four of five of ${counted(runs, "simulated study", "simulated studies")}` : `an odds ratio of ${enough.oddsRatio} per 10 mm is found in ${Math.round(enough.power * runs)} of ${counted(runs, "simulated study", "simulated studies")}: ${howSure({ ...enough, estimate: enough.power, level: 0.95 })}`}.`,
    tables: [
      {
        caption: `Share of simulated studies that find the effect, two-sided at ${cellText(alpha, { percent: true })}: ${size}`,
        columns: [
          { name: "oddsRatio", title: "Odds ratio per 10 mm of rain in 14 days", digits: 2 },
          { name: "power", title: "Found in", percent: true },
          { name: "lower", title: "Limits for the number of runs, from", percent: true },
          { name: "upper", title: "to", percent: true },
          { name: "runs", title: "Runs" },
          { name: "refused", title: "Runs without an estimate" },
        ],
        rows: lines,
      },
    ],
    charts: [],
    cautions: [
      ...(runs < 200 ? [`${runs} runs are a first look; a protocol needs some 500.`] : []),
      "Simulated rain and season stand for the real ones; a drier or steadier climate tells less. This is for planning: it says nothing about an estimate already made.",
    ],
    method: {
      unit: "a simulated study",
      n: runs * lines.length,
      missing: lines.reduce((sum, { refused }) => sum + refused, 0),
      text: `Logistic regression with season and hind foot held equal, errors from the spread of yards (below ten yards: yards as terms, errors from the spread of horses). Likeness within yard and horse (SD ${truth.yardSd.toFixed(2)} and ${truth.horseSd.toFixed(2)} of the log odds), prevalence and hind feet as in the records (${caseWords(study.settings)}). Seed "${climateSeed}". The line at odds ratio 1 is the size of the test.`,
      links: ["plantedTruth", "simulateSeasonStudy", "fitLogistic"],
    },
  };
}

/** Quick, and as robust: logistic regression, errors from the spread of yards, or with few yards these as terms and the spread of horses. */
function analyses(rows: readonly SeasonFoot[]) {
  const contrast = "rainMm14d per 10";
  const base = { name: "Planned analysis", contrast, adjustedFor: ["season", "hind"], level: 0.95 };
  const yards = new Set(rows.map(({ yardId }) => yardId)).size;
  const few = yards < fewestYards;
  const effect = refusedEffect(base, () => {
    const fit = fitLogistic({
      rows,
      outcome: "thrush",
      terms: [
        { column: "rainMm14d", per: 10 },
        { season: "visitDate" },
        "hind",
        ...(few && yards > 1 ? [{ column: "yardId", reference: certain(rows[0]).yardId }] : []),
      ],
      cluster: few ? ["yardId", "horseId"] : "yardId",
    });
    const { oddsRatio, se, p, df } = certain(fit.coefficients.find(({ name }) => name === contrast));
    const counts = { n: fit.n, cases: fit.cases, missing: 0, clusters: fit.clusters };
    const rest = { clusteredBy: few ? "horseId" : "yardId", refused: null, method: fit.method, note: null };
    return { ...base, ...oddsRatio, seLog: se, p, df, ...counts, ...rest };
  });
  return [effect];
}

/** The size and likeness of the study in hand, changed as planned. */
function designOf(study: Study, planned: DetectableOptions["planned"] = {}): SeasonDesign | string {
  const rows = thrushCases(study).filter(({ thrush, yardId }) => thrush !== null && yardId !== null);
  const yards = new Set(rows.map(({ yardId }) => yardId)).size;
  const horses = new Set(rows.map(({ horseId }) => horseId)).size;
  const { minimumHorses } = study.settings;
  if (horses < minimumHorses)
    return tooFewHorses(horses, minimumHorses, "a graded frog at a known yard", "do not tell how alike feet are");
  if (yards < 2 && planned.yards === undefined)
    return "All horses stand at 1 yard, where rain cannot be told from what else goes on: plan a study with more (`planned`).";
  const months = new Set(rows.map(({ visitDate }) => visitDate.slice(5, 7))).size;
  if (months < fewestMonths && Object.keys(planned).length === 0)
    return `Visits lie in ${counted(months, "month")} of the year, and season is told from rain with ${fewestMonths} or more: plan a study all year round (\`planned\`).`;
  const fit = whenPossible(() =>
    fitMixedLogistic({
      rows: rows.map((row) => ({ ...row, hind: row.end === "hind" })),
      outcome: "thrush",
      terms: ["hind"],
      groups: yards > 1 ? ["yardId", "horseId"] : ["horseId"],
    }),
  );
  if (typeof fit === "string") return `How alike feet of a horse are cannot be told. ${fit}`;
  const dates = rows.map(({ visitDate }) => visitDate).sort();
  const gaps = [...grouped(rows, ({ horseId }) => horseId).values()].flatMap((list) => {
    const own = [...new Set(list.map(({ visitDate }) => visitDate))].sort();
    return own.slice(1).map((date, place) => certain(dayNumber(date)) - certain(dayNumber(certain(own[place]))));
  });
  if (gaps.length === 0) return "No horse was seen twice, so how often horses are seen cannot be told.";
  const sds = fit.groups.map(({ sd }) => sd);
  const size = {
    yards,
    horsesPerYard: horses / yards,
    from: certain(dates[0]),
    to: certain(dates.at(-1)),
    visitGapDays: Math.max(1, Math.round(describe(gaps).median)),
    ...planned,
  };
  return {
    ...size,
    truth: {
      // A typical month holds some 35 mm in 14 days of the simulated weather; the effect planted moves the mean by little.
      intercept: certain(fit.coefficients[0]).estimate,
      rainPer10Mm14d: 0,
      seasonAmplitude: 0.3,
      hind: certain(fit.coefficients[1]).estimate,
      yardSd: yards > 1 ? certain(sds[0]) : 0,
      horseSd: certain(sds.at(-1)),
    },
  };
}
