import type { Study } from "../study/Study.js";
import { StudyError } from "../study/StudyError.js";

/**
 * Refuses a study without a visit; `purpose` is what there is nothing for: `to review`.
 *
 * @throws StudyError `no_visits`.
 *
 * @private
 */
export function requireVisits(study: Pick<Study, "visits">, folder: string, purpose: string): void {
  if (study.visits.length > 0) return;
  throw new StudyError(
    "no_visits",
    `${folder} holds no visit that can be used, so there is nothing ${purpose}.`,
    `Run: underfoot check ${folder}`,
  );
}
