import { dayNumber } from "../study/dayNumber.js";
import type { Foot } from "../study/Foot.js";
import type { FootVisit } from "../study/FootVisit.js";
import { grouped } from "../study/grouped.js";

/** Why a recorded finding is the vet's. */
export type VetFlagRule =
  "thrush_to_the_quick" | "lame" | "crack_at_coronet" | "thrush_two_visits" | "thrush_and_lame" | "abscess_again";

/** One recorded finding that is the vet's, with what was written down and when. */
export interface VetFlag {
  readonly horseId: string;
  /** Null for a finding of the whole horse: lameness, when several feet were recorded. */
  readonly foot: Foot | null;
  readonly visitDate: string;
  readonly rule: VetFlagRule;
  /** `now`: vet work at once. `soon`: to be seen by the vet. */
  readonly urgency: "now" | "soon";
  /** What was recorded, in plain words; never a diagnosis. */
  readonly recorded: string;
  /** Whether a vet was already seeing the foot; null when not recorded. */
  readonly vetInvolved: boolean | null;
  /** Recorded at the horse's last visit, so nothing later is known. */
  readonly latest: boolean;
}

const AGAIN_AFTER_DAYS = 14;

/**
 * Findings in the records that are the vet's, newest first, `now` before `soon` on one day.
 *
 * Method: now: grade 3 (by its definition to the quick), a visit made because the horse was lame, a crack from the coronet. Soon: grade 2
 * or more at two visits running of one foot, thrush of any grade at a visit made for lameness, an abscess of the same foot again
 * after 14 days or more. Only what is recorded counts: the absence of a flag is no sign of soundness.
 *
 * Missing: an empty cell raises no flag; an ungraded visit is passed over in a run of grades.
 *
 * Source: common practice, no source.
 */
export function vetFlags(visits: readonly FootVisit[]): VetFlag[] {
  const lastVisit = new Map<string, string>();
  for (const { horseId, visitDate } of visits) {
    if (visitDate > (lastVisit.get(horseId) ?? "")) lastVisit.set(horseId, visitDate);
  }
  const feet = grouped(visits, ({ horseId, foot }) => `${horseId}\n${foot}`);
  const flags = [...feet.values()].flatMap((history) => flagsOfFoot(history, lastVisit));
  return [...flags, ...lameVisits(visits, lastVisit)].sort(
    (a, b) =>
      compare(b.visitDate, a.visitDate) ||
      compare(a.urgency, b.urgency) ||
      compare(a.horseId, b.horseId) ||
      compare(a.foot ?? "", b.foot ?? ""),
  );
}

interface FootDay {
  readonly visitDate: string;
  readonly grade: number | null;
  readonly lame: boolean;
  readonly coronetCrack: boolean;
  readonly abscess: boolean;
  readonly vetInvolved: boolean | null;
}

/** One entry a day: rows of one day before and after trimming are read together, the worst finding counting. */
function footDays(history: readonly FootVisit[]): FootDay[] {
  return [...grouped(history, ({ visitDate }) => visitDate)]
    .sort(([a], [b]) => compare(a, b))
    .map(([visitDate, rows]) => {
      const grades = rows.flatMap((row) => (row.thrushGrade === null ? [] : [row.thrushGrade]));
      return {
        visitDate,
        grade: grades.length === 0 ? null : Math.max(...grades),
        lame: rows.some((row) => row.reason === "lame"),
        coronetCrack: rows.some((row) => row.crackFrom === "coronet"),
        abscess: rows.some((row) => row.abscess === true),
        vetInvolved: anyYes(rows),
      };
    });
}

function anyYes(rows: readonly FootVisit[]): boolean | null {
  const said = rows.map((row) => row.vetInvolved);
  return said.includes(true) ? true : said.includes(false) ? false : null;
}

function flagsOfFoot(history: readonly FootVisit[], lastVisit: ReadonlyMap<string, string>): VetFlag[] {
  const { horseId, foot } = history[0]!;
  const flags: VetFlag[] = [];
  let gradeBefore: number | null = null;
  let abscessDay: number | null = null;
  for (const day of footDays(history)) {
    const raise = (rule: VetFlagRule, urgency: VetFlag["urgency"], recorded: string) =>
      flags.push({
        horseId,
        foot,
        visitDate: day.visitDate,
        rule,
        urgency,
        recorded,
        vetInvolved: day.vetInvolved,
        latest: day.visitDate === lastVisit.get(horseId),
      });
    if (day.grade === 3) raise("thrush_to_the_quick", "now", "thrush grade 3");
    if (day.coronetCrack) raise("crack_at_coronet", "now", "crack starting at the coronet");
    if (day.grade !== null && day.grade >= 2 && gradeBefore !== null && gradeBefore >= 2) {
      raise("thrush_two_visits", "soon", `thrush grade ${day.grade}, after grade ${gradeBefore} at the visit before`);
    }
    if (day.lame && day.grade !== null && day.grade >= 1)
      raise("thrush_and_lame", "soon", `thrush grade ${day.grade} at a visit for lameness`);
    const number = dayNumber(day.visitDate)!;
    if (day.abscess) {
      if (abscessDay !== null && number - abscessDay >= AGAIN_AFTER_DAYS) {
        raise("abscess_again", "soon", `abscess, ${number - abscessDay} days after an earlier one of the same foot`);
      }
      abscessDay = number;
    }
    gradeBefore = day.grade ?? gradeBefore;
  }
  return flags;
}

function lameVisits(visits: readonly FootVisit[], lastVisit: ReadonlyMap<string, string>): VetFlag[] {
  const lame = visits.filter((visit) => visit.reason === "lame");
  return [...grouped(lame, ({ horseId, visitDate }) => `${horseId}\n${visitDate}`).values()].map((rows) => {
    const { horseId, visitDate, foot } = rows[0]!;
    return {
      horseId,
      foot: rows.every((row) => row.foot === foot) ? foot : null,
      visitDate,
      rule: "lame",
      urgency: "now",
      recorded: "visit made because the horse was lame",
      vetInvolved: anyYes(rows),
      latest: visitDate === lastVisit.get(horseId),
    };
  });
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
