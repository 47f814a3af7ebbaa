import type { Table } from "../chart/Table.js";
import { type DoubleScore, doubleScores } from "../derive/doubleScores.js";
import { type BootstrapEstimate, clusterBootstrap } from "../estimate/clusterBootstrap.js";
import { cohenKappa } from "../estimate/cohenKappa.js";
import { seededRandom } from "../estimate/numeric/seededRandom.js";
import { pairedRatings } from "../estimate/pairedRatings.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { seedOfAnswers } from "./seedOfAnswers.js";
import { compared } from "./words/compared.js";
import { counted } from "./words/counted.js";
import { percentage } from "./words/percentage.js";
import { rounded } from "./words/rounded.js";
import { signed } from "./words/signed.js";
import { tooFewHorses } from "./words/tooFewHorses.js";
import { withInterval } from "./words/withInterval.js";

const { id, question } = asked("observers-agreeing");
const GRADES = [0, 1, 2, 3];

/** Agreement of two observers on the thrush grade of the same feet on the same day, and by quarter. Unit: a foot on a day; horses as clusters. */
export function observersAgreeing(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses, caseGrade } = study.settings;
  const scores = doubleScores(study.visits);
  const pairs = [
    ...grouped(scores, ({ firstObserverId, secondObserverId }) => `${firstObserverId}\n${secondObserverId}`).values(),
  ];
  pairs.sort((a, b) => b.length - a.length || (pairName(a) < pairName(b) ? -1 : 1));
  const most = pairs[0] ?? [];
  const horses = new Set(most.map(({ horseId }) => horseId)).size;
  if (horses < minimumHorses) {
    const have = "a foot graded by the same two observers on one day";
    return {
      kind: "not_enough_data",
      id,
      question,
      reason: tooFewHorses(horses, minimumHorses, have, "say nothing of agreement"),
    };
  }
  const whole = agreementOf(most, level);
  const [first, second] = observersOf(most);
  const drift = driftTable(most, level, minimumHorses);
  return {
    kind: "answer",
    id,
    question,
    sentence: `${first} and ${second} gave the same grade to ${withInterval(sure(whole.same), percentage)} of ${counted(most.length, "foot", "feet")} of ${counted(horses, "horse")} that both graded on one day; weighted kappa ${kappaWords(whole.kappa)}. ${leaningWords(whole.leaning, first, second)}`,
    tables: [matrixTable(most), pairsTable(pairs, level, caseGrade), drift],
    charts: [],
    cautions: [
      "Whether one observer knew the other's grade is not recorded; agreement is then better than it would be blind.",
      "Kappa falls when nearly all feet are alike, however well observers agree; read it beside the share of equal grades.",
      "Feet graded twice were not drawn at random; agreement elsewhere may differ.",
    ],
    method: {
      unit: "a foot on a day, graded by two observers",
      n: most.length,
      missing: 0,
      text: `Grades 0 to 3 of the project scale. Cohen's kappa with quadratic weights; limits of all figures from ${whole.same.replicates} resamples of whole horses, since feet of one horse are alike, seed “${seedOfAnswers}”. Difference: grade of the second observer less that of the first, mean over feet. Feet graded by one observer only are no pairs.`,
      links: ["doubleScores", "cohenKappa", "clusterBootstrap"],
    },
  };
}

function observersOf(scores: readonly DoubleScore[]): [first: string, second: string] {
  return [scores[0]?.firstObserverId ?? "", scores[0]?.secondObserverId ?? ""];
}

function pairName(scores: readonly DoubleScore[]): string {
  return observersOf(scores).join("\n");
}

interface Agreement {
  readonly same: BootstrapEstimate;
  readonly kappa: BootstrapEstimate;
  readonly leaning: BootstrapEstimate;
}

type Counts = readonly (readonly number[])[];

/** Each horse is counted once; a resample adds up the tables of the horses drawn. */
function agreementOf(scores: readonly DoubleScore[], level: number): Agreement {
  const clusters = [...grouped(scores, ({ horseId }) => horseId).values()].map((own) => [countsOf(own)]);
  const sure = (statistic: (counts: Counts) => number | null) =>
    clusterBootstrap(clusters, (drawn) => statistic(added(drawn)), {
      random: seededRandom(seedOfAnswers),
      replicates: 1000,
      level,
    });
  return {
    same: sure((counts) => meanOf(counts, (first, second) => Number(first === second))),
    kappa: sure((counts) => cohenKappa(counts, { weights: "quadratic" }).estimate),
    leaning: sure((counts) => meanOf(counts, (first, second) => second - first)),
  };
}

function countsOf(scores: readonly DoubleScore[]): Counts {
  return pairedRatings(
    scores.map(({ firstGrade, secondGrade }) => ({ first: firstGrade, second: secondGrade })),
    GRADES,
  ).matrix;
}

function added(tables: readonly Counts[]): Counts {
  return GRADES.map((_, i) => GRADES.map((__, j) => tables.reduce((sum, table) => sum + (table[i]?.[j] ?? 0), 0)));
}

function meanOf(counts: Counts, value: (first: number, second: number) => number): number {
  let [sum, n] = [0, 0];
  counts.forEach((row, first) => {
    row.forEach((count, second) => {
      sum += count * value(first, second);
      n += count;
    });
  });
  return sum / n;
}

function sure({ estimate, lower, upper, level }: BootstrapEstimate) {
  return { estimate: estimate ?? 0, lower, upper, level };
}

function kappaWords(kappa: BootstrapEstimate): string {
  if (kappa.estimate === null) return "has no meaning, since all feet got one grade";
  return withInterval(sure(kappa), (value) => rounded(value, 2));
}

function leaningWords(leaning: BootstrapEstimate, first: string, second: string): string {
  const by = withInterval(sure(leaning), (value) => signed(value, 2));
  return compared(leaning, 0, {
    above: `${second} graded higher than ${first}, by ${by} of a grade.`,
    below: `${second} graded lower than ${first}, by ${by} of a grade.`,
    unclear: `Neither can be said to grade higher: ${second} less ${first} ${by} of a grade.`,
  });
}

function matrixTable(scores: readonly DoubleScore[]): Table {
  const [first, second] = observersOf(scores);
  return {
    caption: `Feet by the grade ${first} gave (down) and the grade ${second} gave (across)`,
    columns: [
      { name: "first", title: `${first}: grade` },
      ...GRADES.map((grade) => ({ name: `grade${grade}`, title: `${second}: ${grade}` })),
    ],
    rows: countsOf(scores).map((row, i) => ({ first: i, ...Object.fromEntries(row.map((count, j) => [`grade${j}`, count])) })),
  };
}

function pairsTable(pairs: readonly (readonly DoubleScore[])[], level: number, caseGrade: number): Table {
  return {
    caption: `All pairs of observers; case: grade ${caseGrade} or more`,
    columns: [
      { name: "pair", title: "Observers" },
      { name: "feet", title: "Feet" },
      { name: "horses", title: "Horses" },
      { name: "same", title: "Same grade", percent: true },
      { name: "kappa", title: "Weighted kappa", digits: 2 },
      { name: "lower", title: "From", digits: 2 },
      { name: "upper", title: "To", digits: 2 },
      { name: "caseKappa", title: "Kappa, case or not", digits: 2 },
      { name: "prevalenceIndex", title: "Prevalence index", digits: 2 },
    ],
    rows: pairs.map((scores) => {
      const { same, kappa } = agreementOf(scores, level);
      const cases = cohenKappa(
        pairedRatings(
          scores.map((row) => ({ first: Number(row.firstGrade >= caseGrade), second: Number(row.secondGrade >= caseGrade) })),
          [0, 1],
        ).matrix,
      );
      const [first, second] = observersOf(scores);
      return {
        pair: `${first} and ${second}`,
        feet: scores.length,
        horses: new Set(scores.map(({ horseId }) => horseId)).size,
        ...{ same: same.estimate, kappa: kappa.estimate, lower: kappa.lower, upper: kappa.upper },
        ...{ caseKappa: cases.estimate, prevalenceIndex: cases.prevalenceIndex },
      };
    }),
  };
}

function driftTable(scores: readonly DoubleScore[], level: number, minimumHorses: number): Table {
  const [first, second] = observersOf(scores);
  const quarterOf = ({ visitDate }: DoubleScore) =>
    `${visitDate.slice(0, 4)}, quarter ${Math.ceil(Number(visitDate.slice(5, 7)) / 3)}`;
  const quarters = [...grouped(scores, quarterOf)].sort(([a], [b]) => (a < b ? -1 : 1));
  const rows = quarters.map(([quarter, own]) => {
    const horses = new Set(own.map(({ horseId }) => horseId)).size;
    const base = { quarter, feet: own.length, horses };
    if (horses < minimumHorses) return { ...base, same: null, kappa: null, leaning: null, lower: null, upper: null };
    const { same, kappa, leaning } = agreementOf(own, level);
    const { estimate, lower, upper } = leaning;
    return { ...base, same: same.estimate, kappa: kappa.estimate, leaning: estimate, lower, upper };
  });
  return {
    caption: `${first} and ${second} by quarter: agreement, and how much higher ${second} graded`,
    columns: [
      { name: "quarter", title: "Quarter" },
      { name: "feet", title: "Feet" },
      { name: "horses", title: "Horses" },
      { name: "same", title: "Same grade", percent: true },
      { name: "kappa", title: "Weighted kappa", digits: 2 },
      { name: "leaning", title: "Difference, grades", digits: 2 },
      { name: "lower", title: "From", digits: 2 },
      { name: "upper", title: "To", digits: 2 },
    ],
    rows,
    greyed: rows.flatMap(({ horses }, row) =>
      horses < minimumHorses ? [{ row, reason: `fewer than ${minimumHorses} horses` }] : [],
    ),
  };
}
