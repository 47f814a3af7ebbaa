import type { FootVisit } from "../../study/FootVisit.js";
import type { HorseStay } from "../../study/HorseStay.js";
import type { Fault } from "../report/Fault.js";
import { messages } from "../report/messages.js";
import type { ReportFault, RowRule } from "../table/RowRule.js";
import { duplicateOf } from "./duplicateOf.js";
import { horseFault } from "./horseFault.js";
import type { KnownHorses } from "./horseRule.js";
import { visitTally } from "./visitTally.js";

/** A toe that measures this much more after the trim than before it, mm, may still be the same toe. Common practice, no source. */
const TOE_TOLERANCE_MM = 3;

/**
 * Rule of visits.csv. Set aside: a visit after `today`, of a horse that was set aside or is not in horses.csv (null: there is none), before
 * the horse's birth year, or the second row of one horse, day, foot and stage, unless both name their observer and these are two people. Kept with a warning: before a birth year that is a guess,
 * outside the horse's stays, and cells or rows that contradict each other. The tally counts what was seen and accepted.
 */
export function visitRule(
  horses: KnownHorses | null,
  today: string,
): RowRule<FootVisit> & { readonly tally: ReturnType<typeof visitTally> } {
  const tally = visitTally();
  const faultOfHorse = horseFault(horses);
  // By the number of the visit: a few rows each, so that looking through them costs less than an index of all rows would.
  const acceptedRows: FootVisit[][] = [];
  let last = { horseId: "", visitDate: "", visit: -1, faults: [] as readonly Fault[], bare: false };

  // The feet of one visit mostly stand together: what belongs to the visit is looked up once.
  const lookUp = (horseId: string, visitDate: string) => {
    const stays = horses?.stays.get(horseId) ?? [];
    const future = visitDate > today ? messages.inFuture(visitDate, today) : null;
    const faults = [future, faultOfHorse(horseId), ...stayFaults(stays, visitDate)].filter((fault) => fault !== null);
    const bare = stays.length > 0 && stays.every(({ shod }) => shod === "bare");
    return { horseId, visitDate, visit: tally.seen(horseId, visitDate), faults, bare };
  };

  return {
    tally,
    seen({ horseId, visitDate }) {
      if (typeof horseId !== "string") return;
      if (typeof visitDate !== "string") tally.seenHorse(horseId);
      else if (horseId !== last.horseId || visitDate !== last.visitDate) last = lookUp(horseId, visitDate);
    },
    accepts(row, report) {
      let usable = true;
      for (const fault of last.faults) {
        report(fault, fault.code === "unknown_horse" || fault.code === "not_equine" ? "horse_id" : "visit_date");
        if (fault.severity === "set_aside") usable = false;
      }
      if (!usable) return false;
      const ofVisit = (acceptedRows[last.visit] ??= []);
      const same = repeated(ofVisit, row);
      if (same !== undefined) {
        report(duplicateOf("a row of this horse, day, foot and stage", same, row));
        return false;
      }
      ofVisit.push(row);
      warnOfContradictions(row, last.bare, report);
      if (row.toeLengthMm !== null && (row.stage === "before_trim" || row.stage === "after_trim")) {
        const other = row.stage === "before_trim" ? "after_trim" : "before_trim";
        const others = ofVisit.filter(({ foot, stage }) => foot === row.foot && stage === other);
        warnOfGrownToe(row, others, report);
      }
      tally.accepted(last.visit);
      return true;
    },
  };
}

function repeated(ofVisit: readonly FootVisit[], { foot, stage, observerId }: FootVisit): FootVisit | undefined {
  for (const first of ofVisit) {
    if (first.foot !== foot || first.stage !== stage) continue;
    if (first.observerId === null || observerId === null || first.observerId === observerId) return first;
  }
  return undefined;
}

function stayFaults(stays: readonly HorseStay[], visitDate: string): (Fault | null)[] {
  if (stays.length === 0) return [];
  const year = Number(visitDate.slice(0, 4));
  const born = stays.find(({ birthYear }) => birthYear !== null && year < birthYear);
  const inside = ({ joinedOn, leftOn }: HorseStay) => (joinedOn ?? visitDate) <= visitDate && visitDate <= (leftOn ?? visitDate);
  const guessed = born?.birthYearEstimated === true;
  const birth = guessed ? messages.beforeGuessedBirth : messages.beforeBirth;
  return [
    born === undefined ? null : birth(visitDate, born.birthYear ?? year),
    stays.some(inside) ? null : messages.outsideStays(visitDate),
  ];
}

function warnOfContradictions(row: FootVisit, bare: boolean, report: ReportFault): void {
  if (row.thrushGrade === 0 && row.thrushSite !== null) report(messages.siteWithoutThrush(), "thrush_site");
  if (row.examined === false && row.thrushGrade !== null) report(messages.findingNotExamined(), "examined");
  if (bare && row.shoeState === "lost") report(messages.lostFromBare(), "shoe_state");
}

function warnOfGrownToe(row: FootVisit, others: readonly FootVisit[], report: ReportFault): void {
  const other = others.find(({ observerId, toeLengthMm }) => observerId === row.observerId && toeLengthMm !== null);
  const [before, after] = row.stage === "before_trim" ? [row, other] : [other, row];
  if (before === undefined || after === undefined || before.toeLengthMm === null || after.toeLengthMm === null) return;
  if (after.toeLengthMm > before.toeLengthMm + TOE_TOLERANCE_MM) {
    report(messages.toeLongerAfter(before.toeLengthMm, after.toeLengthMm, other?.line ?? 0), "toe_length_mm");
  }
}
