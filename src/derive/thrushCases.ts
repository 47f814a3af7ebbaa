import type { FootVisit } from "../study/FootVisit.js";
import { grouped } from "../study/grouped.js";
import type { HorseStay } from "../study/HorseStay.js";
import type { Study } from "../study/Study.js";
import { asWritten } from "./asWritten.js";
import { byVisit } from "./byVisit.js";
import { examination } from "./examination.js";
import type { FootCase, MissingGrade } from "./FootCase.js";
import { footEnd } from "./footEnd.js";
import { footSide } from "./footSide.js";
import { stayAt } from "./stayAt.js";

/**
 * Thrush case or not, one row for each foot and visit day, by day, horse and foot.
 *
 * Method: a case is a grade at or above `caseGrade` of the settings. Rows of one foot and day, before and after trimming, are one
 * look; the highest grade counts. Where two observers graded a foot on one day, the one written first counts, so that a foot that was
 * looked at twice is not graded more severely than the others. Cases under different case grades are never compared.
 *
 * Missing: without a grade the case is null and `missing` says why; a foot that was not looked at is never a clear foot. A grade
 * beside "not examined" is not used.
 *
 * Source: the grades are a project scale, not a validated one.
 */
export function thrushCases(study: Pick<Study, "visits" | "horses" | "settings">): FootCase[] {
  const stays = grouped(study.horses, (stay) => stay.horseId);
  const looks = grouped(study.visits, ({ horseId, visitDate, foot }) => `${horseId}\n${visitDate}\n${foot}`);
  const rows = [...looks.values()].map((written): FootCase => {
    const look = asWritten(written);
    const { horseId, visitDate, foot } = look[0]!;
    const stay = stayAt(stays.get(horseId) ?? [], horseId, visitDate);
    return caseOf(look, stay, study.settings.caseGrade, foot);
  });
  return rows.sort((a, b) => byVisit(a, b) || (a.foot < b.foot ? -1 : 1));
}

function caseOf(look: readonly FootVisit[], stay: HorseStay | null, caseGrade: number, foot: FootVisit["foot"]): FootCase {
  const { horseId, visitDate } = look[0]!;
  const seen = look.filter((row) => examination(row) === "seen");
  const observerId = seen.find((row) => row.thrushGrade !== null)?.observerId ?? firstOf(look, "observerId");
  const own = seen.filter((row) => row.observerId === observerId || row.observerId === null);
  const grades = own.flatMap((row) => (row.thrushGrade === null ? [] : [row.thrushGrade]));
  const missing = missingGrade(look, seen.length > 0, grades.length > 0);
  const thrushGrade = missing === null ? Math.max(...grades) : null;
  const sites = own.flatMap((row) => row.thrushSite ?? []);
  return {
    horseId,
    yardId: stay?.yardId ?? null,
    visitDate,
    month: visitDate.slice(0, 7),
    monthOfYear: Number(visitDate.slice(5, 7)),
    foot,
    end: footEnd(foot),
    side: footSide(foot),
    thrushGrade,
    thrushSite: thrushGrade === null || sites.length === 0 ? null : [...new Set(sites)],
    thrush: thrushGrade === null ? null : thrushGrade >= caseGrade,
    missing,
    notExaminedReason: missing === "not_examined" ? firstOf(look, "notExaminedReason") : null,
    observerId,
    reason: firstOf(look, "reason"),
    shod: stay?.shod ?? null,
    surfaceTreated7d: firstOf(look, "surfaceTreated7d"),
  };
}

function missingGrade(look: readonly FootVisit[], seen: boolean, graded: boolean): MissingGrade | null {
  if (footSide(look[0]!.foot) === null) return "specimen";
  if (graded) return null;
  if (seen) return "not_graded";
  return look.some((row) => examination(row) === "not_seen") ? "not_examined" : "not_said";
}

function firstOf<Field extends keyof FootVisit>(look: readonly FootVisit[], field: Field): FootVisit[Field] | null {
  return look.find((row) => row[field] !== null)?.[field] ?? null;
}
