import { fabricMeasures } from "../../derive/fabric/fabricMeasures.js";
import type { FootTable } from "../../derive/fabric/FootTable.js";
import { standingFeet } from "../../derive/fabric/standingFeet.js";
import { tableOfFeet } from "../../derive/fabric/tableOfFeet.js";
import { stayAt } from "../../derive/stayAt.js";
import { fromOtherDays } from "../../estimate/fabric/fromOtherDays.js";
import type { Readings } from "../../estimate/fabric/Readings.js";
import { spreadOf } from "../../estimate/fabric/spreadOf.js";
import { grouped } from "../../study/grouped.js";
import type { Study } from "../../study/Study.js";
import type { Issue } from "../../study/Issue.js";
import { flipInflation } from "../../estimate/fabric/flipInflation.js";
import { historyOf } from "../../estimate/fabric/historyOf.js";
import { fabricIssue } from "./fabricIssue.js";
import { fewestDays } from "./swaps/fewestDays.js";
import { leftWithoutBest } from "./swaps/leftWithoutBest.js";
import { seenOfFeet } from "./swaps/seenOfFeet.js";
import { swapLimit } from "./swaps/swapLimit.js";
import type { HorseWeights } from "./swaps/HorseWeights.js";
import { twoHorses } from "./swaps/twoHorses.js";

/** So many days, taken at even steps, are enough to see how the evidence scatters. */
const DAYS_USED = 5000;
/** A set in which no measure lies farther than this many standard deviations from its own horse is nobody else's. */
const OUT_OF_CHARACTER = 2;

/**
 * Two horses of a yard whose rows of one day were probably exchanged: all four feet of each fit the other horse better.
 *
 * Method: as in `swappedLabels`, with the mean of the four feet of one horse less that of the other on the same day at the same stage, and
 * the horn colour of each foot. Only sets out of character for their own horse are looked at; each of the two must fit the other horse better,
 * and so must each foot; the limit is for all pairs of a yard and day.
 *
 * Missing: a measure counts where all four feet have it, and a horse with three days or more. Rows of one horse under the name of another
 * that was not seen on that day are not looked for.
 *
 * Source: own.
 */
export function swappedHorses(
  { visits, horses }: Pick<Study, "visits" | "horses">,
  table: FootTable = tableOfFeet(visits),
): Issue[] {
  const readings = meansOfFour(table);
  const spreads = fabricMeasures.map(({ step }, column) => spreadOf(readings, column, { least: step ** 2 / 12 }));
  const weights: HorseWeights = {
    readings,
    expectations: fromOtherDays(readings, spreads, fewestDays),
    hornColour: seenOfFeet(table).hornColour,
    table,
  };
  const days = yardDays(table, horses).map((sets) => sets.filter((set) => judgeable(weights, set)));
  const step = Math.max(1, Math.floor(days.length / DAYS_USED));
  const neighbours = days
    .filter((_, place) => place % step === 0)
    .flatMap((sets) => sets.slice(1).map((set, at) => twoHorses(weights, sets[at] ?? set, set)));
  const inflation = flipInflation({
    gap: neighbours.map(({ gap }) => gap),
    information: neighbours.map(({ information }) => information),
  });
  const compared = days.reduce((sum, sets) => sum + (sets.length * (sets.length - 1)) / 2, 0);
  const limit = swapLimit(compared);
  return days.flatMap((sets) => {
    const strange = sets.filter((set) => outOfCharacter(weights, set));
    return strange.flatMap((a, at) =>
      strange.slice(at + 1).flatMap((b) => {
        if (table.sets[a]?.horseId === table.sets[b]?.horseId) return [];
        const { parts, horn, misfits } = twoHorses(weights, a, b);
        if (Math.min(...misfits) <= 0) return [];
        const all = [...parts.map((part) => part / inflation), ...horn()];
        const gap = all.reduce((sum, part) => sum + part, 0);
        const told = gap >= limit && gap - Math.max(0, ...all) >= leftWithoutBest && everyFoot(weights, a, b);
        return told ? [issueOf(weights, [a, b], parts, gap, limit, compared)] : [];
      }),
    );
  });
}

/** Mean of the four feet for each measure, NaN unless all four have it. */
function meansOfFour({ values, starts, days }: FootTable): Readings {
  const columns = fabricMeasures.length;
  const means = new Float64Array(days.length * columns).map((_, at) => {
    const from = Math.floor(at / columns) * columns * standingFeet.length + (at % columns);
    return standingFeet.reduce((sum, _foot, foot) => sum + (values[from + foot * columns] ?? NaN), 0) / standingFeet.length;
  });
  return { columns, values: means, starts, days };
}

/** Numbers of the sets of each yard, day and stage. */
function yardDays({ sets }: FootTable, horses: Study["horses"]): number[][] {
  const stays = grouped(horses, ({ horseId }) => horseId);
  const days = grouped(sets.keys(), (place) => {
    const { horseId = "", visitDate = "", stage = null } = sets[place] ?? {};
    const yardId = stayAt(stays.get(horseId) ?? [], horseId, visitDate)?.yardId ?? "";
    return `${visitDate}\n${yardId}\n${stage ?? ""}`;
  });
  return [...days.values()];
}

function judgeable({ readings, expectations }: HorseWeights, set: number): boolean {
  for (let at = set * readings.columns; at < (set + 1) * readings.columns; at++) {
    if (!Number.isNaN(readings.values[at]) && !Number.isNaN(expectations.expected[at])) return true;
  }
  return false;
}

function outOfCharacter({ readings, expectations }: HorseWeights, set: number): boolean {
  for (let at = set * readings.columns; at < (set + 1) * readings.columns; at++) {
    const distance = Math.abs((readings.values[at] ?? NaN) - (expectations.expected[at] ?? NaN));
    if (distance > OUT_OF_CHARACTER * Math.sqrt(expectations.variance[at] ?? NaN)) return true;
  }
  return false;
}

/** Whether each foot by itself fits the other horse better than its own, by the same foot on other days. */
function everyFoot({ table: { values, starts, days }, expectations, readings: { columns } }: HorseWeights, a: number, b: number) {
  const ofFeet = { columns: columns * standingFeet.length, values, starts, days };
  return standingFeet.every((_, foot) => {
    const signs = fabricMeasures.map((_measure, measure) => {
      const column = foot * columns + measure;
      const here = (values[a * ofFeet.columns + column] ?? NaN) - (values[b * ofFeet.columns + column] ?? NaN);
      const usual = historyOf(ofFeet, a, column).mean - historyOf(ofFeet, b, column).mean;
      const part = (here * usual) / (expectations.variance[a * columns + measure] ?? NaN);
      return Number.isNaN(part) ? 0 : part;
    });
    return signs.reduce((sum, part) => sum + part, 0) < 0;
  });
}

function issueOf(
  { readings, table }: HorseWeights,
  pair: readonly [number, number],
  parts: readonly number[],
  gap: number,
  limit: number,
  compared: number,
): Issue {
  const sets = pair.flatMap((place) => table.sets[place] ?? []);
  const rows = sets.flatMap((set) => standingFeet.flatMap((foot) => set.rows[foot] ?? []));
  const lines = rows.map(({ line }) => line).sort((x, y) => x - y);
  const best = parts.indexOf(Math.max(...parts));
  const { title = "", unit = "mm" } = fabricMeasures[best] ?? {};
  const told = pair.map((place) => {
    const here = readings.values[place * readings.columns + best] ?? NaN;
    const { mean, days } = historyOf(readings, place, best);
    const name = table.sets[place]?.horseId ?? "";
    return `${name} ${here.toFixed(1)} here and ${mean.toFixed(1)} ${unit === "deg" ? "degrees" : "mm"} on ${days} other days`;
  });
  return fabricIssue({
    file: rows[0]?.file ?? "visits.csv",
    line: lines[0] ?? null,
    column: "horse_id",
    code: "horses_swapped",
    found:
      `the rows of ${sets.map(({ horseId }) => horseId).join(" and ")} on ${sets[0]?.visitDate ?? ""} were probably exchanged: mean ${title} of ` +
      `the four feet ${told.join(", ")}; the log-likelihood is better by ${gap.toFixed(1)} the other way round, where ` +
      `${limit.toFixed(1)} is asked of ${compared} pairs`,
    hint: `Look at the paper record of that day; if it is so, exchange horse_id in lines ${lines.join(", ")}.`,
  });
}
