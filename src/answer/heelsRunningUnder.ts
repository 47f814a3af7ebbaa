import type { Table } from "../chart/Table.js";
import { mostUsedStage } from "../derive/mostUsedStage.js";
import type { ShapeMeasureRow } from "../derive/ShapeMeasureRow.js";
import { shapeMeasures } from "../derive/shapeMeasures.js";
import { type FootTrend, type FootTrends, footTrends } from "../estimate/footTrends.js";
import { minimumDetectableOf } from "../estimate/minimumDetectableOf.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { definitionsTable } from "./definitionsTable.js";
import { counted } from "./words/counted.js";
import { footInWords } from "./words/footInWords.js";
import { listed } from "./words/listed.js";
import { shortDate } from "./words/shortDate.js";
import { stageInWords } from "./words/stageInWords.js";

const { id, question } = asked("heels-running-under");

/** Trend of the gap between toe and heel angle, foot by foot, held to the smallest detectable change. Unit: a foot. */
export function heelsRunningUnder(study: Study): Answer | NotEnoughData {
  const { level, underrunGapDeg } = study.settings;
  const all = shapeMeasures(study, ["toeHeelGapDeg"]).filter(
    ({ side, species }) => side !== null && !["donkey", "mule"].includes(species ?? "horse"),
  );
  const stage = mostUsedStage(all);
  const rows = all.filter((row) => row.stage === stage);
  const minimumDetectable = minimumDetectableOf(study.visits, "toeHeelGapDeg", { level });
  const trends = footTrends(rows, { level, minimumDetectable });
  if (trends.feet.length === 0) {
    const reason = `Toe and heel angle of the same foot are needed on three days: ${trends.note ?? ""}`;
    return { kind: "not_enough_data", id, question, reason };
  }
  const running = trends.feet.filter(({ real, change }) => real === true && change.estimate > 0);
  const last = new Map(rows.map((row) => [row.footId, row]));
  const under = [...last.values()].filter(({ value }) => value >= underrunGapDeg).length;
  return {
    kind: "answer",
    id,
    question,
    sentence: `${sayRunning(running, trends)} Measured last, the gap was ${underrunGapDeg} degrees or more in ${under} of ${counted(last.size, "foot", "feet")}.`,
    tables: [trendTable(trends.feet, last), definitionsTable(["toeHeelGapDeg", "toeAngleDeg", "heelAngleDeg"])],
    charts: [],
    cautions: [
      "A trim changes both angles: only readings of one stage are set beside each other, and the farrier is part of the change.",
      "A foot that is not listed may still be changing by less than can be told from reading error.",
    ],
    method: {
      unit: "a foot",
      n: trends.feet.length,
      missing: new Set(all.map(({ footId }) => footId)).size - trends.feet.length,
      text: `Toe angle less heel angle ${stageInWords(stage)}; ${trends.method}. Change: slope of the foot times the days from its first to its last reading. Running under: the change is up, its interval leaves out 0, and it is more than the smallest detectable change, ${minimumDetectable === null ? "which is not known here, so that nothing is flagged" : `${minimumDetectable.toFixed(1)} degrees`}. Missing: feet without two days at that stage.${trends.note === null ? "" : ` ${trends.note}`}`,
      links: ["footTrends", "fitMixedLinear", "minimumDetectableOf", "shapeFlags"],
    },
  };
}

function sayRunning(running: readonly FootTrend[], { minimumDetectable }: FootTrends): string {
  if (minimumDetectable === null)
    return "The error of reading these angles is not known here, so no change is called real: let two people measure the same feet on one day.";
  if (running.length === 0)
    return `No foot's heel ran under by more than can be told from reading error (${minimumDetectable.toFixed(1)} degrees of gap).`;
  const named = running.map(
    ({ horseId, foot, change }) => `${horseId} ${footInWords(foot)} (+${change.estimate.toFixed(1)} degrees)`,
  );
  return `Heels ran under in ${counted(running.length, "foot", "feet")}: ${listed(named)}.`;
}

function trendTable(feet: readonly FootTrend[], last: ReadonlyMap<string, ShapeMeasureRow>): Table {
  const sorted = [...feet].sort((a, b) => b.change.estimate - a.change.estimate || (a.footId < b.footId ? -1 : 1));
  return {
    caption: "Gap between toe and heel angle, degrees: the ten feet in which it grew most",
    columns: [
      { name: "horseId", title: "Horse" },
      { name: "foot", title: "Foot" },
      { name: "from", title: "From" },
      { name: "to", title: "To" },
      { name: "times", title: "Readings" },
      { name: "latest", title: "Gap, last", digits: 1 },
      { name: "change", title: "Change by the trend", digits: 1 },
      { name: "lower", title: "From", digits: 1 },
      { name: "upper", title: "To", digits: 1 },
      { name: "real", title: "More than reading error" },
    ],
    rows: sorted.slice(0, 10).map(({ horseId, foot, footId, from, to, times, change, real }) => ({
      ...{ horseId, foot: footInWords(foot), from: shortDate(from), to: shortDate(to), times },
      latest: last.get(footId)?.value ?? null,
      ...{ change: change.estimate, lower: change.lower, upper: change.upper },
      real: real === null ? "not known" : real ? "yes" : "no",
    })),
  };
}
