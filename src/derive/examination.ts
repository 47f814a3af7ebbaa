import { fieldName } from "../study/fieldName.js";
import type { FootVisit } from "../study/FootVisit.js";
import { visitColumns } from "../study/visitColumns.js";

/** Cells that say nothing about whether a foot was looked at. */
const notFindings = new Set([
  "stage",
  "examined",
  "not_examined_reason",
  "horn_colour",
  "shoe_state",
  "work_done",
  "surface_treated_7d",
  "vet_involved",
  "note",
]);

const findings = visitColumns
  .filter(({ name, level }) => level === "foot-visit" && name !== "foot" && !notFindings.has(name))
  .map(({ name }) => fieldName(name) as keyof FootVisit);

/**
 * Whether a foot was looked at: `seen`, `not_seen`, or `not_said` when the row holds neither a yes or no nor any finding.
 *
 * Method: the cell `examined` decides; where it is empty, any recorded grade, measure or finding counts as seen.
 *
 * Missing: `not_said` is never read as seen, and never as sound.
 */
export function examination(visit: FootVisit): "seen" | "not_seen" | "not_said" {
  if (visit.examined !== null) return visit.examined ? "seen" : "not_seen";
  return findings.some((field) => visit[field] !== null) ? "seen" : "not_said";
}
