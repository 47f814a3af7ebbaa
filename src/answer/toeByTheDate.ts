import type { Table } from "../chart/Table.js";
import { type ExpectedToeGrowth, expectedToeGrowth } from "../derive/expectedToeGrowth.js";
import { markGrowth } from "../derive/markGrowth.js";
import { herdGrowth } from "../estimate/herdGrowth.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { definitionsTable } from "./definitionsTable.js";
import { publishedGrowthTable } from "./publishedGrowthTable.js";
import { counted } from "./words/counted.js";
import { footInWords } from "./words/footInWords.js";
import { shortDate } from "./words/shortDate.js";
import { daysInWords } from "./words/daysInWords.js";

const { id, question } = asked("toe-by-the-date");

/** Growth to be expected over the open interval of each foot, as a range. Unit: a foot with an open interval. */
export function toeByTheDate(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses } = study.settings;
  const growth = herdGrowth(markGrowth(study), { level, leastHorses: minimumHorses });
  const rows = expectedToeGrowth(study, growth.rates);
  if (rows.length === 0) {
    const reason = "No horse has an open interval with a planned date; without a plan there is no day to look ahead to.";
    return { kind: "not_enough_data", id, question, reason };
  }
  const { slowestMmPerDay, fastestMmPerDay } = growth.rates;
  const days = [...new Set(rows.map(({ days: planned }) => planned))].sort((a, b) => a - b);
  const [fewest, most] = [days[0] ?? 0, days.at(-1) ?? 0];
  const spans = fewest === most ? daysInWords(fewest) : `${fewest} to ${most} days`;
  const least = rows.reduce((low, row) => Math.min(low, row.slowestMm), Infinity);
  const greatest = rows.reduce((high, row) => Math.max(high, row.fastestMm), 0);
  return {
    kind: "answer",
    id,
    question,
    sentence: `By their planned dates (${spans}) the walls of ${counted(rows.length, "foot", "feet")} may have grown ${least.toFixed(0)} to ${greatest.toFixed(0)} mm, at ${slowestMmPerDay.toFixed(2)} to ${fastestMmPerDay.toFixed(2)} mm a day (${growth.ratesFrom === "this herd" ? "marks followed in this herd" : "published range"}).`,
    tables: [
      expectedTable(rows),
      ...(growth.ratesFrom === "this herd" ? [] : [publishedGrowthTable()]),
      definitionsTable(["toeLengthMm"]),
    ],
    charts: [],
    cautions: [
      "This is no advice to change an interval: it says what walls do, not what this horse needs.",
      "It is growth of the wall. A bare foot also wears, so its toe may gain less than the slowest growth.",
    ],
    method: {
      unit: "a foot with an open interval",
      n: rows.length,
      missing: rows.filter(({ toeAfterTrimMm }) => toeAfterTrimMm === null).length,
      text: `Planned days of the open interval times the rate of growth, slowest and fastest; added to the toe length after the last trim where it was measured. ${growth.ratesFrom === "this herd" ? "Rates: what a horse of this herd may grow, from marks that were followed." : `Rates: the published range. ${growth.note ?? ""}`} Missing: feet whose toe was not measured after the trim; they have the growth alone.`,
      links: ["expectedToeGrowth", "herdGrowth", "growthRates", "trimIntervals"],
    },
  };
}

function expectedTable(rows: readonly ExpectedToeGrowth[]): Table {
  return {
    caption: "Growth by the planned date, mm",
    columns: [
      { name: "horseId", title: "Horse" },
      { name: "foot", title: "Foot" },
      { name: "shoeing", title: "Going" },
      { name: "from", title: "Last done" },
      { name: "dueOn", title: "Planned for" },
      { name: "days", title: "Days" },
      { name: "slowestMm", title: "Growth, least", digits: 1 },
      { name: "fastestMm", title: "most", digits: 1 },
      { name: "toeAfterTrimMm", title: "Toe after the trim", digits: 0 },
      { name: "toeFromMm", title: "Toe then, least", digits: 0 },
      { name: "toeToMm", title: "most", digits: 0 },
    ],
    rows: rows.map(({ horseId, foot, shoeing, from, dueOn, days, slowestMm, fastestMm, toeAfterTrimMm, toeFromMm, toeToMm }) => ({
      ...{ horseId, foot: footInWords(foot), shoeing, from: shortDate(from), dueOn: shortDate(dueOn), days },
      ...{ slowestMm, fastestMm, toeAfterTrimMm, toeFromMm, toeToMm },
    })),
  };
}
