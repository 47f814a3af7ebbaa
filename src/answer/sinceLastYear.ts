import type { Table } from "../chart/Table.js";
import { asOfDate } from "../derive/asOfDate.js";
import type { FootCase } from "../derive/FootCase.js";
import { requiredDay } from "../derive/requiredDay.js";
import { thrushCases } from "../derive/thrushCases.js";
import { meanInterval } from "../estimate/meanInterval.js";
import { dateOfDay } from "../study/dateOfDay.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { caseWords } from "./caseWords.js";
import { compared } from "./words/compared.js";
import { counted } from "./words/counted.js";
import { percentage } from "./words/percentage.js";
import { pointsInterval } from "./words/pointsInterval.js";
import { shortDate } from "./words/shortDate.js";
import { tooFewHorses } from "./words/tooFewHorses.js";

const { id, question } = asked("since-last-year");
const WINDOW_DAYS = 91;
const YEAR_DAYS = 365;

/** Thrush in the last three months beside the same days a year earlier, within the same horses. Unit: a horse. */
export function sinceLastYear(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses } = study.settings;
  const asOf = asOfDate(study);
  const notEnough = (reason: string): NotEnoughData => ({ kind: "not_enough_data", id, question, reason });
  if (asOf === null) return notEnough("No foot has been recorded yet.");
  const windows = { now: windowTo(requiredDay(asOf)), then: windowTo(requiredDay(asOf) - YEAR_DAYS) };
  const feet = thrushCases(study).filter(({ missing }) => missing !== "specimen");
  const horses = [...grouped(feet, ({ horseId }) => horseId).values()].map((rows) => ({
    now: shareIn(rows, windows.now),
    then: shareIn(rows, windows.then),
  }));
  const pairs = horses.flatMap(({ now, then }) => (now === null || then === null ? [] : [{ now, then }]));
  const words = `${windowWords(windows.now)} and ${windowWords(windows.then)}`;
  if (pairs.length < minimumHorses)
    return notEnough(tooFewHorses(pairs.length, minimumHorses, `a frog graded in both ${words}`, "give no comparison"));
  const difference = meanInterval(
    pairs.map(({ now, then }) => now - then),
    { level },
  );
  const which = compared(difference, 0, {
    above: "Worse than a year ago",
    below: "Better than a year ago",
    unclear: "Not to be told apart from a year ago",
  });
  const share = (window: "now" | "then") => percentage(pairs.reduce((sum, pair) => sum + pair[window], 0) / pairs.length);
  return {
    kind: "answer",
    id,
    question,
    sentence: `${which}: ${share("now")} of looks had thrush in ${windowWords(windows.now)}, ${share("then")} in ${windowWords(windows.then)}, in the ${counted(pairs.length, "horse")} graded in both; a difference of ${pointsInterval({ ...difference, estimate: difference.estimate ?? 0 })}.`,
    tables: [tableOf(pairs)],
    charts: [],
    cautions: [
      "The same months only, so season is much the same; weather, ground, interval and who graded may not be.",
      "Horses that came or left between the two are in neither share.",
    ],
    method: {
      unit: "a horse",
      n: pairs.length,
      missing: horses.length - pairs.length,
      text: `Case: ${caseWords(study.settings)}. Share of graded looks with thrush in the ${WINDOW_DAYS} days up to ${shortDate(asOf)} less that of the same days ${YEAR_DAYS} days before, within each horse; mean over horses, Student's t limits.`,
      links: ["thrushCases", "meanInterval"],
    },
  };
}

interface Window {
  readonly from: string;
  readonly to: string;
}

function windowTo(day: number): Window {
  return { from: dateOfDay(day - WINDOW_DAYS + 1), to: dateOfDay(day) };
}

function windowWords({ from, to }: Window): string {
  return `${shortDate(from)} to ${shortDate(to)}`;
}

function shareIn(rows: readonly FootCase[], { from, to }: Window): number | null {
  const graded = rows.filter(({ visitDate, thrush }) => thrush !== null && visitDate >= from && visitDate <= to);
  return graded.length === 0 ? null : graded.filter(({ thrush }) => thrush).length / graded.length;
}

function tableOf(pairs: readonly { readonly now: number; readonly then: number }[]): Table {
  const count = (holds: (change: number) => boolean) => pairs.filter(({ now, then }) => holds(now - then)).length;
  return {
    caption: "Horses by how they stand against a year ago",
    columns: [
      { name: "standing", title: "Share of looks with thrush" },
      { name: "horses", title: "Horses" },
    ],
    rows: [
      { standing: "less than a year ago", horses: count((change) => change < 0) },
      { standing: "the same", horses: count((change) => change === 0) },
      { standing: "more than a year ago", horses: count((change) => change > 0) },
    ],
  };
}
