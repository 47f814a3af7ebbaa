import { horseCases } from "../derive/horseCases.js";
import { monthlyRain } from "../derive/monthlyRain.js";
import { thrushCases } from "../derive/thrushCases.js";
import { type MonthRow, rainAndThrushChart } from "../chart/rainAndThrushChart.js";
import { prevalenceBy } from "../estimate/prevalenceBy.js";
import { capital } from "../chart/parts/capital.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { caseWords } from "./caseWords.js";
import { counted } from "./words/counted.js";
import { monthInWords } from "./words/monthInWords.js";
import { howSure } from "./words/howSure.js";

const { id, question } = asked("thrush-by-month");

/** Prevalence of thrush by calendar month, beside the rain of the month. Unit: a horse seen in the month. */
export function thrushByMonth(study: Study): Answer | NotEnoughData {
  const { settings } = study;
  const rows = horseCases(thrushCases(study)).map((row) => ({ ...row, case: row.thrush }));
  const { level, minimumHorses } = settings;
  const { groups } = prevalenceBy(rows, (row) => row.month, { level, minimumHorses });
  const rain = new Map(monthlyRain(study.weather).map(({ month, rainMm }) => [month, rainMm]));
  const months = groups.map(({ group, prevalence, rows: seen, horses }): MonthRow => {
    const horse = prevalence?.horse;
    const rainMm = rain.get(group) ?? null;
    if (horse === undefined)
      return {
        month: group,
        estimate: null,
        lower: null,
        upper: null,
        cases: 0,
        n: Math.min(horses, seen),
        tooFew: true,
        rainMm,
      };
    return {
      month: group,
      estimate: horse.estimate,
      lower: horse.lower,
      upper: horse.upper,
      cases: horse.cases,
      n: horse.n,
      rainMm,
    };
  });
  const judged = months.flatMap((month) => (month.estimate === null ? [] : [{ ...month, estimate: month.estimate, level }]));
  const ranked = [...judged].sort((a, b) => b.estimate - a.estimate || (a.month < b.month ? -1 : 1));
  const [worst, best] = [ranked[0], ranked.at(-1)];
  if (worst === undefined || best === undefined || worst === best) {
    return {
      kind: "not_enough_data",
      id,
      question,
      reason: `${capital(counted(judged.length, "month has", "months have"))} at least ${minimumHorses} horses with a graded frog; two are needed to compare.`,
    };
  }
  const chart = rainAndThrushChart(months, {
    level,
    unit: "horses",
    caseDefinition: `${caseWords(settings)}, any foot`,
    tooFewReason: `fewer than ${minimumHorses} horses`,
  });
  return {
    kind: "answer",
    id,
    question,
    sentence: `Thrush was most frequent in ${monthInWords(worst.month)}, in ${howSure(worst)} of the horses seen, and least in ${monthInWords(best.month)}, in ${howSure(best)}.`,
    tables: [],
    charts: [chart],
    cautions: [
      "Wet months are also short days, more stabling and less work: what goes with the month need not be the rain.",
      "The horses seen differ from month to month, and overdue or sore horses are seen sooner.",
    ],
    method: {
      unit: "a horse seen in the month",
      n: rows.filter((row) => row.case !== null).length,
      missing: rows.filter((row) => row.case === null).length,
      text: `Case: ${caseWords(settings)}, any foot, at any visit of the month. Wilson limits; with ten yards or more, limits that let horses of one yard be alike. Rain: mean of the gauges with a reading on every day of the month.`,
      links: ["prevalenceBy", "horseCases", "monthlyRain"],
    },
  };
}
