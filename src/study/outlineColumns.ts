import type { Column } from "./Column.js";

/** Columns of `outlines.csv`: traced outlines of the ground surface, one row per point. */
// prettier-ignore
/** @private */
export const outlineColumns = [
  { name: "horse_id", title: "Horse", meaning: "The horse, as named in horses.csv.", type: "id", unit: null, level: "outline-point", required: true, missing: "point belongs to no horse" },
  { name: "visit_date", title: "Visit date", meaning: "Calendar day the outline was traced.", type: "date", unit: null, level: "outline-point", required: true, missing: "point cannot be placed in time" },
  { name: "foot", title: "Foot", meaning: "Foot that was traced. F or H alone for a specimen of unknown side, U for one of unknown end, LF_specimen and the like for one of known side: a foot without a live horse.", type: "code", unit: null, level: "outline-point", required: true, missing: "point belongs to no foot", values: ["LF", "RF", "LH", "RH", "F", "H", "U", "LF_specimen", "RF_specimen", "LH_specimen", "RH_specimen"] },
  { name: "stage", title: "Stage", meaning: "Whether it was traced before or after trimming; single when there was only one occasion.", type: "code", unit: null, level: "outline-point", required: false, missing: "unknown; kept apart from both stages", values: ["before_trim", "after_trim", "single"] },
  { name: "tracing", title: "Tracing", meaning: "Which tracing of this foot on this day and at this stage, where it was traced more than once.", type: "id", unit: null, level: "outline-point", required: false, missing: "the only tracing, or the first" },
  { name: "observer_id", title: "Observer", meaning: "Who traced, as a code.", type: "id", unit: null, level: "outline-point", required: false, missing: "not recorded" },
  { name: "ring", title: "Ring", meaning: "What was traced: the bearing border of the wall, or the frog.", type: "code", unit: null, level: "outline-point", required: true, missing: "point belongs to no ring", values: ["wall", "frog"] },
  { name: "point", title: "Point", meaning: "Number of the point along the ring, or the landmark toe, heel_medial or heel_lateral.", type: "id", unit: null, level: "outline-point", required: true, missing: "point has no place in the ring" },
  { name: "x_mm", title: "x", meaning: "Across the foot.", type: "number", unit: "mm", level: "outline-point", required: true, missing: "point has no place", hard: [-2000, 2000], source: "common practice, no source" },
  { name: "y_mm", title: "y", meaning: "Along the foot.", type: "number", unit: "mm", level: "outline-point", required: true, missing: "point has no place", hard: [-2000, 2000], source: "common practice, no source" },
] as const satisfies readonly Column[];
