import { fabricMeasures } from "../../derive/fabric/fabricMeasures.js";
import type { FootTable } from "../../derive/fabric/FootTable.js";
import { standingFeet } from "../../derive/fabric/standingFeet.js";
import { tableOfFeet } from "../../derive/fabric/tableOfFeet.js";
import { quoted } from "../../read/report/quoted.js";
import { grouped } from "../../study/grouped.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";
import { smallChance } from "./alike/smallChance.js";
import { fabricIssue } from "./fabricIssue.js";
import { falseAlarmShare } from "./falseAlarmShare.js";

/** Measures a foot must share with another, all of them. Common practice, no source. */
const FEWEST_MEASURES = 5;
const MEASURES = fabricMeasures.length;
/** Measures of one animal hang together, so that they count for half of what independent ones would. Common practice, no source. */
const WORTH = 0.5;

/**
 * Sets of one day and stage that hold the very same measures, five or more for each foot that both have, under the names of two horses: one
 * visit written down twice, or one horse under two names.
 *
 * Method: the chance that two horses agree in a measure is the chance that two readings of that measure in the study do. The product
 * over all measures, its logarithm halved since the measures of one animal hang together, times the number of pairs of horses that were seen on
 * one day at one stage must be `falseAlarmShare` at most.
 *
 * Missing: feet with fewer measures are not compared; a measure that one has and the other has not makes them differ.
 *
 * Source: own; thresholds common practice, no source.
 */
export function sameRowsTwoHorses({ visits }: Pick<Study, "visits">, table: FootTable = tableOfFeet(visits)): Issue[] {
  const { sets, values } = table;
  const days = grouped(sets.keys(), (place) => `${sets[place]?.visitDate ?? ""}\n${sets[place]?.stage ?? ""}`);
  const compared = [...days.values()].reduce((sum, day) => sum + (day.length * (day.length - 1)) / 2, 0);
  const found = new Map<string, { readonly a: number; readonly b: number; readonly feet: number[] }>();
  for (const day of days.values()) {
    const places = day.flatMap((place) => standingFeet.map((_, foot) => place * standingFeet.length + foot));
    const measured = places.filter((at) => measuresAt(values, at) >= FEWEST_MEASURES);
    for (const alike of grouped(measured, (at) => hashOf(values, at)).values()) {
      const first = alike[0] ?? 0;
      for (const at of alike.slice(1)) {
        const [a, b] = [Math.floor(first / standingFeet.length), Math.floor(at / standingFeet.length)];
        const foot = at % standingFeet.length;
        if (first % standingFeet.length !== foot || sets[a]?.horseId === sets[b]?.horseId) continue;
        if (!sameMeasures(values, first, at)) continue;
        const pair = found.get(`${a} ${b}`);
        if (pair === undefined) found.set(`${a} ${b}`, { a, b, feet: [foot] });
        else pair.feet.push(foot);
      }
    }
  }
  if (found.size === 0) return [];
  const agreements = fabricMeasures.map((_, measure) => agreementOf(values, measure));
  return [...found.values()].flatMap(({ a, b, feet }) => {
    const logs = feet.flatMap((foot) =>
      agreements.map((chance, measure) => {
        const value = values[(a * standingFeet.length + foot) * MEASURES + measure] ?? NaN;
        return Number.isNaN(value) ? 0 : Math.log(chance);
      }),
    );
    const chance = Math.exp(WORTH * logs.reduce((sum, log) => sum + log, 0));
    return chance * compared > falseAlarmShare ? [] : [issueOf(table, a, b, feet, chance)];
  });
}

function measuresAt(values: Float64Array, foot: number): number {
  let count = 0;
  for (let at = foot * MEASURES; at < (foot + 1) * MEASURES; at++) if (!Number.isNaN(values[at])) count += 1;
  return count;
}

/** The same number for equal measures of one foot, and rarely for others. */
function hashOf(values: Float64Array, foot: number): number {
  let hash = foot % standingFeet.length;
  for (let at = foot * MEASURES; at < (foot + 1) * MEASURES; at++) {
    const value = values[at] ?? NaN;
    hash = (Math.imul(hash, 31) + (Number.isNaN(value) ? 7 : Math.round(10 * value))) | 0;
  }
  return hash;
}

function sameMeasures(values: Float64Array, a: number, b: number): boolean {
  for (let measure = 0; measure < MEASURES; measure++) {
    if (!Object.is(values[a * MEASURES + measure], values[b * MEASURES + measure])) return false;
  }
  return true;
}

/** Chance that two readings of a measure are the same: the sum of the squared shares of its values. */
function agreementOf(values: Float64Array, measure: number): number {
  const counts = new Map<number, number>();
  let total = 0;
  for (let at = measure; at < values.length; at += MEASURES) {
    const value = values[at] ?? NaN;
    if (Number.isNaN(value)) continue;
    counts.set(value, (counts.get(value) ?? 0) + 1);
    total += 1;
  }
  let squares = 0;
  for (const count of counts.values()) squares += (count / total) ** 2;
  return squares;
}

function issueOf({ sets }: FootTable, a: number, b: number, feet: readonly number[], chance: number): Issue {
  const rows = feet.flatMap((foot) => {
    const name = standingFeet[foot] ?? "LF";
    return [sets[a]?.rows[name], sets[b]?.rows[name]].flatMap((row) => row ?? []);
  });
  const last = rows[1];
  const measures = fabricMeasures.filter(({ field }) => (last?.[field] ?? null) !== null).length;
  return fabricIssue({
    file: last?.file ?? "visits.csv",
    line: last?.line ?? null,
    column: "horse_id",
    code: "same_rows_two_horses",
    found:
      `on ${last?.visitDate ?? ""} ${measures} measures of each foot of ${quoted(sets[b]?.horseId ?? "")} are those of ` +
      `${quoted(sets[a]?.horseId ?? "")} (${feet.map((foot) => standingFeet[foot]).join(", ")}; lines ` +
      `${rows.map(({ line }) => line).join(", ")}); two horses would be so alike ${smallChance(chance)} times`,
    hint: "Keep the rows under the right name and take the others out.",
  });
}
