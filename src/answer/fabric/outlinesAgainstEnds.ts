import { tracedOutlines } from "../../derive/tracedOutlines.js";
import { describedOutlines, type OutlineDescription } from "../../estimate/describedOutlines.js";
import { EstimateError } from "../../estimate/EstimateError.js";
import { flipPart } from "../../estimate/fabric/flipPart.js";
import { fromOtherDays } from "../../estimate/fabric/fromOtherDays.js";
import type { Readings } from "../../estimate/fabric/Readings.js";
import { spreadOf } from "../../estimate/fabric/spreadOf.js";
import { frontOrHind } from "../../estimate/frontOrHind.js";
import { grouped } from "../../study/grouped.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";
import { fabricIssue } from "./fabricIssue.js";
import { fewestDays } from "./swaps/fewestDays.js";
import { swapLimit } from "./swaps/swapLimit.js";

/** What one outline says without its size: a large foot is not a front foot. */
const terms = ["shapeIndex", "toeTaper", "widestFromToe", "circularity"];
/** A rule from fewer horses is no rule. Common practice, no source. */
const FEWEST_HORSES = 10;
/** Variance of a contrast below which no reading is believed to repeat. */
const LEAST = 0.01;
const sides = ["left", "right", "both"] as const;

interface Judged {
  readonly foot: OutlineDescription;
  /** By the rule made without its horse. */
  readonly probabilityFore: number;
  /** Place along the discriminant, in standard deviations within ends, front feet above hind feet. */
  readonly score: number;
}

/** The outlines of one horse on one day at one stage. */
interface Occasion {
  readonly horseId: string;
  readonly visitDate: string;
  readonly outlines: readonly Judged[];
  /** Front less hind on the left, on the right, and the mean where both are known; NaN where a foot was not traced. */
  readonly contrasts: readonly number[];
}

/**
 * Traced outlines of front and hind feet of a horse on one day that were probably exchanged, on one side or both: by shape each fits the
 * other's end.
 *
 * Method: the linear discriminant of front and hind (`frontOrHind`) gives each outline a score. All stages of trimming share the rule, since few horses are
 * traced at each; no figure of shape comes from it. Front less hind of one side would change its sign with the labels; how much better that fits is a log-likelihood gap. What is expected is the horse's own mean on other days drawn to that of the herd, for
 * a horse with two other days or more; for a first tracing that of the herd, with the variance between horses added. Told from `swapLimit` on, for all sides of all
 * occasions. Horses and ponies only.
 *
 * Missing: fewer than ten horses with both ends traced, or a rule that cannot be made, raise nothing; nor do specimens of unknown side.
 *
 * Source: Fisher RA (1936) Ann Eugen 7:179-188 for the rule; the likelihood is own.
 */
export function outlinesAgainstEnds(study: Pick<Study, "outlines" | "horses">): Issue[] {
  const occasions = occasionsOf(judgedOutlines(study));
  const horses = [...grouped(occasions, ({ horseId }) => horseId).values()];
  if (horses.length < FEWEST_HORSES) return [];
  const gaps = gapsOf(horses);
  const limit = swapLimit(gaps.filter((gap) => !Number.isNaN(gap)).length);
  return horses.flat().flatMap((occasion, place) => {
    const own = sides.map((_, column) => gaps[place * sides.length + column] ?? NaN);
    const best = Math.max(...own.map((gap) => (Number.isNaN(gap) ? -Infinity : gap)));
    return best < limit ? [] : [issueOf(study, occasion, sides[own.indexOf(best)] ?? "both", best, limit)];
  });
}

function judgedOutlines({ outlines, horses }: Pick<Study, "outlines" | "horses">): readonly Judged[] {
  const species = new Map(horses.map((stay) => [stay.horseId, stay.species]));
  const traced = tracedOutlines({ outlines }, { mirrorLeft: true }).filter(
    ({ horseId, side }) => side !== null && !["donkey", "mule"].includes(species.get(horseId) ?? "horse"),
  );
  const { rows } = describedOutlines(traced);
  if (new Set(rows.map(({ horseId }) => horseId)).size < FEWEST_HORSES) return [];
  try {
    const { rows: scored } = frontOrHind(rows, terms).discriminant;
    const mean = (end: string) => meanOf(scored.filter(({ label }) => label === end).map(({ scores }) => scores[0] ?? NaN));
    const turn = mean("fore") < mean("hind") ? -1 : 1;
    return scored.flatMap(({ row, scores, heldOut }): Judged[] => {
      const foot = rows[row];
      return foot === undefined
        ? []
        : [{ foot, probabilityFore: heldOut.posterior["fore"] ?? NaN, score: turn * (scores[0] ?? NaN) }];
    });
  } catch (fault) {
    if (fault instanceof EstimateError) return [];
    throw fault;
  }
}

function occasionsOf(judged: readonly Judged[]): Occasion[] {
  const groups = grouped(judged, ({ foot }) => JSON.stringify([foot.horseId, foot.visitDate, foot.stage]));
  const occasions = [...groups.values()].flatMap((outlines): Occasion[] => {
    const [left, right] = (["left", "right"] as const).map(
      (side) => meanScore(outlines, side, "fore") - meanScore(outlines, side, "hind"),
    );
    const contrasts = [left ?? NaN, right ?? NaN, ((left ?? NaN) + (right ?? NaN)) / 2];
    const { horseId = "", visitDate = "" } = outlines[0]?.foot ?? {};
    return contrasts.every(Number.isNaN) ? [] : [{ horseId, visitDate, outlines, contrasts }];
  });
  return occasions.sort((a, b) =>
    a.horseId === b.horseId ? (a.visitDate < b.visitDate ? -1 : 1) : a.horseId < b.horseId ? -1 : 1,
  );
}

function meanScore(outlines: readonly Judged[], side: "left" | "right", end: "fore" | "hind"): number {
  return meanOf(outlines.filter(({ foot }) => foot.side === side && foot.end === end).map(({ score }) => score));
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Log-likelihood gap of every contrast of every occasion, in order. */
function gapsOf(horses: readonly (readonly Occasion[])[]): number[] {
  const readings = readingsOf(horses);
  const firsts = readingsOf(horses.map((occasions) => occasions.slice(0, 1)));
  const spreads = sides.map((_, column) => spreadOf(readings, column, { least: LEAST }));
  const history = fromOtherDays(readings, spreads, fewestDays);
  // One occasion a horse, as if all were readings of one subject: what lies between horses is in the variance.
  const herd = { ...firsts, starts: [0, horses.length] };
  const ofHerd = sides.map((_, column) => ({ ...spreadOf(herd, column, { least: LEAST }) }));
  return Array.from(readings.values, (value, at) => {
    const { mean = NaN, within = NaN } = ofHerd[at % sides.length] ?? {};
    const expected = history.expected[at] ?? NaN;
    return Number.isNaN(expected) ? flipPart(value, mean, within) : flipPart(value, expected, history.variance[at] ?? NaN);
  });
}

function readingsOf(horses: readonly (readonly Occasion[])[]): Readings {
  const starts = [0];
  const days: number[] = [];
  for (const occasions of horses) {
    let day = -1;
    occasions.forEach(({ visitDate }, at) => {
      if (visitDate !== occasions[at - 1]?.visitDate) day += 1;
      days.push(day);
    });
    starts.push(days.length);
  }
  return { columns: sides.length, values: horses.flat().flatMap(({ contrasts }) => contrasts), starts, days };
}

function issueOf(
  { outlines }: Pick<Study, "outlines">,
  occasion: Occasion,
  side: (typeof sides)[number],
  gap: number,
  limit: number,
): Issue {
  const { horseId, visitDate } = occasion;
  const feet = occasion.outlines.filter(({ foot }) => side === "both" || foot.side === side);
  const [stage] = feet.map(({ foot }) => foot.stage);
  const point = outlines.find(
    (each) =>
      each.horseId === horseId &&
      each.visitDate === visitDate &&
      each.stage === stage &&
      feet.some(({ foot }) => foot.foot === each.foot),
  );
  const chances = feet.map(({ foot, probabilityFore }) => `${foot.foot} ${(probabilityFore * 100).toFixed(0)} %`);
  const pairs = sides
    .slice(0, 2)
    .filter((each) => side === "both" || each === side)
    .map((each) => (each === "left" ? "LF with LH" : "RF with RH"));
  return fabricIssue({
    file: point?.file ?? "outlines.csv",
    line: point?.line ?? null,
    column: "foot",
    code: "outlines_against_ends",
    found:
      `outlines of front and hind feet of ${horseId} on ${visitDate} were probably exchanged (${pairs.join(", ")}): by shape alone, from horses other than this one, ` +
      `the chance of a front foot is ${chances.join(", ")}; the log-likelihood is better by ${gap.toFixed(1)} the other way round, where ${limit.toFixed(1)} is asked`,
    hint: "Look at the tracings of that day; if it is so, correct foot in outlines.csv, and in visits.csv if it is wrong there too. An odd foot is no fault.",
  });
}
