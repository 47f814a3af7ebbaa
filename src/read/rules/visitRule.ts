import { dayNumber } from "../../study/dayNumber.js";
import type { FootVisit } from "../../study/FootVisit.js";
import type { HorseStay } from "../../study/HorseStay.js";
import type { Fault } from "../report/Fault.js";
import { messages } from "../report/messages.js";
import type { ReportFault, RowRule } from "../table/RowRule.js";
import { horseFault } from "./horseFault.js";
import type { KnownHorses } from "./horseRule.js";
import { visitTally } from "./visitTally.js";

const FEET = ["LF", "RF", "LH", "RH", "F", "H"];
const STAGES = [null, "before_trim", "after_trim", "single"];

/**
 * Rule of visits.csv. Set aside: a visit after `today`, of a horse that was set aside or is not in horses.csv (null: there is none), before
 * the horse's birth year, or the second row of one horse, day, foot and stage. Kept with a warning: before a birth year that is a guess,
 * outside the horse's stays, and cells that contradict each other. The tally counts what was seen and accepted.
 */
export function visitRule(
  horses: KnownHorses | null,
  today: string,
): RowRule<FootVisit> & { readonly tally: ReturnType<typeof visitTally> } {
  const tally = visitTally();
  const faultOfHorse = horseFault(horses);
  const firstLine = new Map<number, number>();
  let last = { horseId: "", visitDate: "", visit: -1, faults: [] as readonly Fault[], bare: false };

  // The feet of one visit mostly stand together: what belongs to the visit is looked up once.
  const lookUp = (horseId: string, visitDate: string) => {
    const day = dayNumber(visitDate) ?? 0;
    const stays = horses?.stays.get(horseId) ?? [];
    const future = visitDate > today ? messages.inFuture(visitDate, today) : null;
    const faults = [future, faultOfHorse(horseId), ...stayFaults(stays, visitDate)].filter((fault) => fault !== null);
    const bare = stays.length > 0 && stays.every(({ shod }) => shod === "bare");
    return { horseId, visitDate, visit: tally.seen(horseId, day), faults, bare };
  };

  return {
    tally,
    seen({ horseId, visitDate }) {
      if (typeof horseId !== "string") return;
      if (typeof visitDate !== "string") tally.seenHorse(horseId);
      else if (horseId !== last.horseId || visitDate !== last.visitDate) last = lookUp(horseId, visitDate);
    },
    accepts(row, report) {
      for (const fault of last.faults)
        report(fault, fault.code === "unknown_horse" || fault.code === "not_equine" ? "horse_id" : "visit_date");
      if (last.faults.some(({ severity }) => severity === "set_aside")) return false;
      const key = (last.visit * FEET.length + FEET.indexOf(row.foot)) * STAGES.length + STAGES.indexOf(row.stage);
      const earlier = firstLine.get(key);
      if (earlier !== undefined) {
        report(messages.duplicate("a row of this horse, day, foot and stage", null, earlier));
        return false;
      }
      firstLine.set(key, row.line);
      warnOfContradictions(row, last.bare, report);
      tally.accepted(last.visit);
      return true;
    },
  };
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
