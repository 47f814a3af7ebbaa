import { type YardMonthRow, yardMonthsChart } from "../chart/yardMonthsChart.js";
import { monthlyRain } from "../derive/monthlyRain.js";
import { describe } from "../estimate/describe.js";
import { fitLinear } from "../estimate/fitLinear.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { caseWords } from "./caseWords.js";
import { asked } from "./climate/asked.js";
import type { ClimateRow } from "./climate/ClimateRow.js";
import { climateRows } from "./climate/climateRows.js";
import { valueOf } from "./climate/valueOf.js";
import { exposureWords } from "./climate/exposureWords.js";
import { fewestMonths } from "./climate/fewestMonths.js";
import { stepWords } from "./climate/stepWords.js";
import { triedExposures } from "./climate/triedExposures.js";
import { whenPossible } from "./climate/whenPossible.js";
import { percentage } from "./words/percentage.js";
import { rounded } from "./words/rounded.js";
import { certain } from "./climate/certain.js";

const { id, question, notEnough } = asked("study-exposure");

/** Wetness before visits in many measures, how much of it is season, and rain beside thrush by yard and month. Unit: a visit to a horse. */
export function studyExposure(study: Study): Answer | NotEnoughData {
  if (study.weather.length === 0) return notEnough("There are no rain readings.");
  const rows = climateRows(study);
  const visits = [...grouped(rows, (row) => `${row.horseId}\n${row.visitDate}`).values()].map(([row]) => certain(row));
  const { primaryExposure } = study.settings;
  const lines = triedExposures(study.settings).map((column) => {
    const values = visits.map((row) => valueOf(row, column) as number | null);
    const known = values.filter((value) => value !== null);
    const what = {
      exposure: exposureWords(column),
      status: column === primaryExposure ? "declared" : "exploratory",
      n: known.length,
      missing: values.length - known.length,
    };
    if (known.length === 0) return { ...what, q1: null, median: null, q3: null, most: null, season: null };
    const { q1, median, q3, max } = describe(known);
    return { ...what, q1, median, q3, most: max, season: seasonShare(visits, column) };
  });
  const declared = lines.find(({ status }) => status === "declared");
  if (declared === undefined || declared.n === 0) return notEnough(`No visit has its ${exposureWords(primaryExposure)}.`);
  const season =
    declared.season === null
      ? ""
      : ` Season, as two yearly waves, accounts for ${percentage(declared.season)} of how it differs between visits; the rest is what tells rain from season.`;
  const [low, high] = [rounded(certain(declared.q1), 0), rounded(certain(declared.q3), 0)];
  return {
    kind: "answer",
    id,
    question,
    sentence: `Half of the ${declared.n} visits${low === high ? ", or more," : ""} came after ${stepWords(primaryExposure, low === high ? low : `${low} to ${high}`)}.${season}`,
    tables: [
      {
        caption: "Wetness before visits (a visit to a horse)",
        columns: [
          { name: "exposure", title: "Exposure" },
          { name: "status", title: "Status" },
          { name: "n", title: "Visits" },
          { name: "missing", title: "Missing" },
          { name: "q1", title: "Lower quartile", digits: 1 },
          { name: "median", title: "Median", digits: 1 },
          { name: "q3", title: "Upper quartile", digits: 1 },
          { name: "most", title: "Most", digits: 1 },
          { name: "season", title: "Share that is season", percent: true },
        ],
        rows: lines,
      },
    ],
    charts: [
      yardMonthsChart(yardMonths(study, rows), {
        title: "Rain and thrush by month, yard by yard",
        caseDefinition: caseWords(study.settings),
      }),
    ],
    cautions: [
      "The usual rain of a month is the gauge's own, over the years of the record; with few years it is the years' own weather in part.",
      "Dew days and the soil's water need temperatures and the gauge's latitude; where these are missing the columns are empty, never 0.",
    ],
    method: {
      unit: "a visit to a horse",
      n: declared.n,
      missing: declared.missing,
      text: "Every measure ends on the last reading with no rain from after the visit. Share that is season: R squared of a linear regression on two yearly waves.",
      links: ["exposureBeforeVisits", "rainNormals", "antecedentPrecipitation", "dewDays", "soilWetness", "fitLinear"],
    },
  };
}

/** Null when the visits lie in too few months of the year to tell. */
function seasonShare(visits: readonly ClimateRow[], column: string): number | null {
  if (new Set(visits.map(({ monthOfYear }) => monthOfYear)).size < fewestMonths) return null;
  const fit = whenPossible(() => fitLinear({ rows: visits, outcome: column, terms: [{ season: "visitDate", harmonics: 2 }] }));
  return typeof fit === "string" ? null : fit.rSquared;
}

function yardMonths(study: Study, rows: readonly ClimateRow[]): YardMonthRow[] {
  const gaugeOf = new Map(study.yards.map(({ yardId, gaugeId }) => [yardId, gaugeId]));
  const rain = new Map(
    [...grouped(study.weather, ({ gaugeId }) => gaugeId)].flatMap(([gaugeId, days]) =>
      monthlyRain(days).map(({ month, rainMm }) => [`${gaugeId}\n${month}`, rainMm] as const),
    ),
  );
  const placed = rows.filter((row) => row.yardId !== null);
  return [...grouped(placed, (row) => `${row.yardId}\n${row.month}`).values()]
    .map((list): YardMonthRow => {
      const { yardId, month } = certain(list[0]);
      const graded = list.filter((row) => row.case !== null);
      const gauge = gaugeOf.get(certain(yardId)) ?? null;
      return {
        yardId: certain(yardId),
        month,
        share: graded.length === 0 ? null : graded.filter((row) => row.case === true).length / graded.length,
        n: graded.length,
        rainMm: gauge === null ? null : (rain.get(`${gauge}\n${month}`) ?? null),
      };
    })
    .sort((a, b) => (a.yardId === b.yardId ? (a.month < b.month ? -1 : 1) : a.yardId < b.yardId ? -1 : 1));
}
