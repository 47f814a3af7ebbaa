import { asOfDate } from "../derive/asOfDate.js";
import { atLastVisit } from "../derive/atLastVisit.js";
import { thrushCases } from "../derive/thrushCases.js";
import { prevalence } from "../estimate/prevalence.js";
import type { PrevalenceEstimate } from "../estimate/PrevalenceEstimate.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { caseWords } from "./caseWords.js";
import { counted } from "./words/counted.js";
import { howSure } from "./words/howSure.js";

const { id, question } = asked("thrush-now");

/** Prevalence of thrush at each horse's last visit, per horse, foot and yard. */
export function thrushNow(study: Study): Answer | NotEnoughData {
  const { settings } = study;
  const feet = atLastVisit(thrushCases(study), asOfDate(study)).filter((row) => row.missing !== "specimen");
  const found = prevalence(
    feet.map((row) => ({ ...row, case: row.thrush })),
    { level: settings.level },
  );
  const { horse } = found;
  const notEnough = (reason: string): NotEnoughData => ({ kind: "not_enough_data", id, question, reason });
  if (horse.estimate === null) return notEnough("No frog was graded at the last visit of any horse.");
  if (horse.n < settings.minimumHorses) {
    return notEnough(
      `${counted(horse.n, "horse has", "horses have")} a graded frog; fewer than ${settings.minimumHorses} give no share.`,
    );
  }
  const missing = horse.missing === 0 ? "" : ` ${counted(horse.missing, "horse", "horses")} had no frog graded then.`;
  return {
    kind: "answer",
    id,
    question,
    sentence: `At their last visit ${horse.cases} of ${counted(horse.n, "horse")} had thrush in at least one foot: ${howSure({ ...horse, estimate: horse.estimate })}.${missing}`,
    tables: [levels([found.horse, found.footVisit, ...(found.yard.n > 1 ? [found.yard] : [])])],
    charts: [],
    cautions: [
      "Only feet that were graded count: a horse with some feet not graded may have thrush in one of those.",
      "The grade is a scale of this project; do not set this share beside one found with another definition.",
    ],
    method: {
      unit: "a horse at its last visit",
      n: horse.n,
      missing: horse.missing,
      text: `Case: ${caseWords(settings)}, any foot. ${[horse.method, horse.note].filter((text) => text !== null).join(". ")}`.replace(
        /\.?$/,
        ".",
      ),
      links: ["prevalence", "thrushCases", "atLastVisit"],
    },
  };
}

function levels(estimates: readonly PrevalenceEstimate[]): Answer["tables"][number] {
  const names = { horse: "horses, any foot", "foot-visit": "feet", yard: "yards, any horse", visit: "visits" };
  return {
    caption: "Thrush at the last visit of each horse, counted three ways",
    columns: [
      { name: "unit", title: "Counted in" },
      { name: "cases", title: "With thrush" },
      { name: "n", title: "Graded" },
      { name: "missing", title: "Not graded" },
      { name: "estimate", title: "Share", percent: true },
      { name: "lower", title: "From", percent: true },
      { name: "upper", title: "To", percent: true },
    ],
    rows: estimates.map(({ unit, cases, n, missing, estimate, lower, upper }) => ({
      unit: names[unit],
      cases,
      n,
      missing,
      estimate,
      lower,
      upper,
    })),
  };
}
