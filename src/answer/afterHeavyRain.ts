import { ratioProfileChart } from "../chart/ratioProfileChart.js";
import type { Table } from "../chart/Table.js";
import { indexColumn } from "../derive/indexColumn.js";
import type { ExposureModel } from "../estimate/ExposureModel.js";
import { exposureWindows } from "../estimate/exposureWindows.js";
import { lagProfile, type LagProfile } from "../estimate/lagProfile.js";
import { seededRandom } from "../estimate/numeric/seededRandom.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { caseWords } from "./caseWords.js";
import { asked, climateSeed, rainCautions } from "./climate/asked.js";
import { triedWindowsDays } from "./climate/climateRows.js";
import { daysStanding, type StandingDays } from "./climate/daysStanding.js";
import { declaredModel } from "./climate/declaredModel.js";
import { exposureWords } from "./climate/exposureWords.js";
import { oddsWords } from "./climate/oddsWords.js";
import { pWords } from "./climate/pWords.js";
import { valueOf } from "./climate/valueOf.js";
import { whenPossible } from "./climate/whenPossible.js";
import { counted } from "./words/counted.js";
import { levelText } from "../chart/parts/levelText.js";

const { id, question, notEnough } = asked("after-heavy-rain");
const per = 10;

/** Exploratory, in plain words: how many days after heavy rain thrush was more frequent, season held equal; or that it cannot be told. Unit: a foot at a visit. */
export function afterHeavyRain(study: Study): Answer | NotEnoughData {
  const declared = declaredModel(study);
  if (typeof declared === "string") return notEnough(declared);
  const { settings } = study;
  const { rows } = declared;
  const model: ExposureModel & typeof declared.model = { ...declared.model, method: "gee" };
  const random = seededRandom(climateSeed).stream("lags");
  const profile = whenPossible(() => lagProfile({ ...model, byDay: "rainMmByDay", per, random }));
  if (typeof profile === "string")
    return notEnough(`The days before a visit cannot be told apart. ${profile.replace(/^Skipped: /, "")}`);
  const { n, days, level, anyDay } = profile;
  const standing = daysStanding(profile);
  return {
    kind: "answer",
    id,
    question,
    sentence: `Exploratory: ${inWords(profile, standing)} From ${counted(n, "foot", "feet")} at visits.`,
    tables: [windowsTable(model, level)],
    charts: [
      ratioProfileChart(
        days.map(({ lagDays, ...band }) => ({ place: lagDays, ...band })),
        {
          title: standing.length === 0 ? "No day after rain stands out" : `Days after rain that stand out: ${spans(standing)}`,
          placeTitle: "Days from the rain to the visit",
          ratioTitle: `Odds ratio of thrush per ${per} mm on that day`,
          level,
        },
      ),
    ],
    cautions: [
      ...rainCautions,
      ...profile.notes,
      "Visits come weeks apart: a frog that went off between two of them is found at the later one, so that the days are those to the visit and not to the first sign.",
      "Looked for in the records and not declared beforehand: it shows where to look, and is no rule for when to act.",
    ],
    method: {
      unit: "a foot at a visit, in its horse, in its yard",
      n,
      missing: rows.length - n,
      text: `Case: ${caseWords(settings)}. ${profile.method}. A day stands out when the interval of the whole curve lies above 1 and the test that no day matters rejects (here p ${pWords(anyDay.p)}).`,
      links: ["lagProfile", "exposureWindows", "holm"],
    },
  };
}

function inWords({ anyDay, level }: LagProfile, standing: readonly StandingDays[]): string {
  const [first] = standing;
  if (first === undefined)
    return `cannot tell. With season held equal no number of days after rain stands out from the others (p ${pWords(anyDay.p)}).`;
  const { most } = standing.reduce((highest, run) => (run.most.estimate > highest.most.estimate ? run : highest));
  const odds = oddsWords({ estimate: most.estimate, lower: most.lowerTogether, upper: most.upperTogether, level });
  return `with season held equal thrush was found more ${spans(standing)} after rain, most ${counted(most.lagDays, "day")} after: its odds were ${odds} times as high for each ${per} mm more. On other days the rain could not be told from none.`;
}

/** `2 to 12 days and 40 days`. */
function spans(standing: readonly StandingDays[]): string {
  return standing.map(({ from, to }) => (from === to ? counted(to, "day") : `${from} to ${to} days`)).join(" and ");
}

/** Totals up to the visit: the same look by windows. */
function windowsTable(model: ExposureModel, level: number): Table {
  const columns = [...triedWindowsDays.map((days) => `rainMm${days}d`), indexColumn(0.9)].filter((column) =>
    model.rows.some((row) => valueOf(row, "case") !== null && valueOf(row, column) !== null),
  );
  const effects = exposureWindows(
    model,
    columns.map((exposure) => ({ exposure, per })),
    model.exposure,
  );
  const interval = `${levelText(level)} interval`;
  return {
    caption: `Rain up to the visit, season held equal: odds of thrush per ${per} mm more (exploratory)`,
    columns: [
      { name: "exposure", title: "Rain" },
      { name: "estimate", title: "Odds ratio", digits: 2 },
      { name: "lower", title: `${interval}, from`, digits: 2 },
      { name: "upper", title: "to", digits: 2 },
      { name: "p", title: "p, Holm over the lines", digits: 4, p: true },
      { name: "n", title: "Feet" },
    ],
    rows: effects.map(({ exposure, estimate, lower, upper, holmP, n }) => ({
      exposure: exposureWords(exposure),
      ...{ estimate, lower, upper, p: holmP, n },
    })),
  };
}
