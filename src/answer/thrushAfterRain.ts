import { type BandRow, prevalenceByBandChart } from "../chart/prevalenceByBandChart.js";
import { rainBands } from "../derive/rainBands.js";
import { rainBeforeVisits } from "../derive/rainBeforeVisits.js";
import { thrushCases } from "../derive/thrushCases.js";
import { describe } from "../estimate/describe.js";
import { prevalenceBy } from "../estimate/prevalenceBy.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { caseWords } from "./caseWords.js";
import { counted } from "./words/counted.js";
import { howSure } from "./words/howSure.js";
import { listed } from "./words/listed.js";
import { daysInWords } from "./words/daysInWords.js";

const { id, question } = asked("thrush-after-rain");
const windowDays = 14;

/** Prevalence of thrush by band of rain before the visit. Unit: a foot at a visit, horses or yards as clusters. */
export function thrushAfterRain(study: Study): Answer | NotEnoughData {
  const { settings } = study;
  const { level, minimumHorses } = settings;
  const notEnough = (reason: string): NotEnoughData => ({ kind: "not_enough_data", id, question, reason });
  const rain = rainBeforeVisits({ ...study, settings: { ...settings, rainWindowsDays: [windowDays] } });
  const amounts = rain.map((row) => row[`rainMm${windowDays}d`] ?? null);
  if (study.weather.length === 0) return notEnough("There are no rain readings.");
  if (amounts.every((amount) => amount === null)) {
    return notEnough(`No visit has ${windowDays} unbroken days of rain readings before it: ${reasonsOf(rain)}.`);
  }
  const rainAt = new Map(rain.map((row, place) => [`${row.horseId}\n${row.visitDate}`, amounts[place] ?? null]));
  const rows = thrushCases(study)
    .filter((row) => row.missing !== "specimen")
    .map((row) => ({ ...row, case: row.thrush, rainMm: rainAt.get(`${row.horseId}\n${row.visitDate}`) ?? null }));
  const bands = rainBands(quarterEdges(amounts));
  const bandOf = (mm: number | null) =>
    mm === null ? null : (bands.find((band) => mm >= band.fromMm && mm < band.toMm)?.name ?? null);
  const order = bands.map((band) => band.name);
  const { groups, ungrouped } = prevalenceBy(rows, (row) => bandOf(row.rainMm), { level, minimumHorses, order });
  const drawn = groups.map(({ group, prevalence, rows: n }): BandRow => {
    if (prevalence === null) return { band: group, estimate: null, lower: null, upper: null, cases: 0, n, tooFew: true };
    const { estimate, lower, upper, cases, n: graded } = prevalence.footVisit;
    return { band: group, estimate, lower, upper, cases, n: graded };
  });
  const judged = drawn.flatMap((row) => (row.estimate === null ? [] : [{ ...row, estimate: row.estimate, level }]));
  const [driest, wettest] = [judged[0], judged.at(-1)];
  if (driest === undefined || wettest === undefined || driest === wettest) {
    return notEnough(`Fewer than two bands of rain hold ${counted(minimumHorses, "horse")} with a graded frog.`);
  }
  const worst = judged.reduce((most, row) => (row.estimate > most.estimate ? row : most), driest);
  const words = (band: string) => bands.find(({ name }) => name === band)?.words ?? band;
  const known = rows.filter((row) => row.rainMm !== null && row.case !== null).length;
  return {
    kind: "answer",
    id,
    question,
    sentence: `After the most rain, ${words(wettest.band)} in ${daysInWords(windowDays)}, ${howSure(wettest)} of feet had thrush; after the least, ${words(driest.band)}, ${howSure(driest)}.`,
    tables: [],
    charts: [
      prevalenceByBandChart(drawn, {
        title: `Thrush was most frequent after ${words(worst.band)} of rain in ${daysInWords(windowDays)}`,
        bandTitle: `Rain in the ${daysInWords(windowDays)} before the visit (mm)`,
        level,
        unit: "feet seen",
        finding: "thrush",
        caseDefinition: caseWords(settings),
        intervalNote: "allowing for feet of one horse being alike",
        tooFewReason: `fewer than ${minimumHorses} horses`,
      }),
    ],
    cautions: [
      "Went with, not caused: wet weeks come in the dark half of the year, when much else differs too. Nothing is adjusted here.",
      "One gauge stands for every field of a yard, and ground can be wet from dew without any rain.",
    ],
    method: {
      unit: "a foot at a visit",
      n: known,
      missing: rows.length - known,
      text: `Case: ${caseWords(settings)}. Rain of the ${daysInWords(windowDays)} up to the last reading that can hold no rain from after the visit; a window with a missing day is not used (${counted(ungrouped, "foot", "feet")} at such visits). Bands: quarters of the visits by rain, edges to the next 5 mm. ${groups.find((group) => group.prevalence !== null)?.prevalence?.footVisit.method ?? ""}.`,
      links: ["rainBeforeVisits", "rainBands", "prevalenceBy"],
    },
  };
}

/** Edges of the quarters, to whole 5 mm so that a table can be read. */
function quarterEdges(amounts: readonly (number | null)[]): number[] {
  const { q1, median, q3 } = describe(amounts);
  return [q1, median, q3].map((edge) => Math.round(edge / 5) * 5);
}

function reasonsOf(rain: ReturnType<typeof rainBeforeVisits>): string {
  const texts = rain.map((row) => row.missing[`rainMm${windowDays}d`]?.text ?? "").filter((text) => text !== "");
  return listed([...new Set(texts)], 3);
}
