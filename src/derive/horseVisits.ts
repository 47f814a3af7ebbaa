import type { Foot } from "../study/Foot.js";
import type { FootVisit } from "../study/FootVisit.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import { asWritten } from "./asWritten.js";
import { byVisit } from "./byVisit.js";
import { examination } from "./examination.js";
import type { FootLook } from "./FootLook.js";
import { footSide } from "./footSide.js";
import { thrushCases } from "./thrushCases.js";

/** One visit day of one horse, all feet of it together. */
export interface HorseVisit {
  readonly horseId: string;
  readonly visitDate: string;
  /** Reasons given in the rows of that day, each once; none when none was recorded. */
  readonly reasons: readonly NonNullable<FootVisit["reason"]>[];
  /** By foot; a foot without a row on that day is not in it. */
  readonly feet: ReadonlyMap<Foot, FootLook>;
}

/**
 * The visits to each horse with what was recorded of each foot, by day and horse.
 *
 * Method: rows of one foot and day, before and after trimming or by two observers, are one look; its grade is that of `thrushCases`. A
 * foot was looked at when any of its rows says so. Detached feet are left out.
 *
 * Missing: a foot without a row on a day has no look on it; it is neither sound nor seen.
 */
export function horseVisits(study: Pick<Study, "visits" | "horses" | "settings">): HorseVisit[] {
  const sided = study.visits.filter(({ foot }) => footSide(foot) !== null);
  const cases = new Map(thrushCases({ ...study, visits: sided }).map((row) => [keyOf(row), row]));
  const days = grouped(sided, ({ horseId, visitDate }) => `${horseId}\n${visitDate}`);
  const visits = [...days.values()].map((written): HorseVisit => {
    const rows = asWritten(written);
    const { horseId, visitDate } = rows[0]!;
    const feet = [...grouped(rows, ({ foot }) => foot)].map(([foot, own]): [Foot, FootLook] => {
      const { thrushGrade: grade, thrushSite } = cases.get(keyOf(own[0]!))!;
      const states = own.map(examination);
      const state = states.includes("seen") ? "seen" : states.includes("not_seen") ? "not_seen" : "not_said";
      const notExaminedReason = own.find((row) => row.notExaminedReason !== null)?.notExaminedReason ?? null;
      return [foot, { foot, state, notExaminedReason, grade, thrushSite, rows: own }];
    });
    const reasons = [...new Set(rows.flatMap(({ reason }) => reason ?? []))];
    return { horseId, visitDate, reasons, feet: new Map(feet) };
  });
  return visits.sort(byVisit);
}

function keyOf(row: { readonly horseId: string; readonly visitDate: string; readonly foot: Foot }): string {
  return `${row.horseId}\n${row.visitDate}\n${row.foot}`;
}
