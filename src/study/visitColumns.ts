import type { Column } from "./Column.js";

const notRecorded = "not recorded; never read as sound or zero";
const practice = "common practice, no source";

/** Columns of `visits.csv`: one row per foot per visit. */
// prettier-ignore
/** @private */
export const visitColumns = [
  { name: "visit_date", title: "Visit date", meaning: "Calendar day of the visit.", type: "date", unit: null, level: "visit", required: true, missing: "row cannot be placed in time" },
  { name: "horse_id", title: "Horse", meaning: "The horse, as named in horses.csv.", type: "id", unit: null, level: "visit", required: true, missing: "row belongs to no horse" },
  { name: "foot", title: "Foot", meaning: "Left or right, fore or hind, seen from the horse: LF is the near fore. F or H alone for a specimen of unknown side, U for one of unknown end, LF_specimen and the like for one of known side: a foot without a live horse.", type: "code", unit: null, level: "foot-visit", required: true, missing: "row belongs to no foot", values: ["LF", "RF", "LH", "RH", "F", "H", "U", "LF_specimen", "RF_specimen", "LH_specimen", "RH_specimen"] },
  { name: "stage", title: "Stage", meaning: "Whether measures were taken before or after trimming; single when only one set was taken.", type: "code", unit: null, level: "foot-visit", required: false, missing: "unknown; shape measures are kept apart from both stages", values: ["before_trim", "after_trim", "single"] },
  { name: "reason", title: "Reason for visit", meaning: "Why the visit was made. Only routine visits reset the interval clock.", type: "code", unit: null, level: "visit", required: false, missing: "unknown; counted as routine and said so", values: ["routine", "lost_shoe", "lame", "follow_up", "new_horse", "other"] },
  { name: "observer_id", title: "Observer", meaning: "Who graded and measured, as a code.", type: "id", unit: null, level: "visit", required: false, missing: notRecorded },
  { name: "examined", title: "Examined", meaning: "Whether this foot was looked at.", type: "boolean", unit: null, level: "foot-visit", required: false, missing: "taken as examined when any finding is recorded" },
  { name: "not_examined_reason", title: "Why not examined", meaning: "Why this foot was not looked at.", type: "text", unit: null, level: "foot-visit", required: false, missing: "no reason given" },
  { name: "thrush_grade", title: "Thrush grade", meaning: "Project scale 0-3: 0 firm dry frog, open clefts; 1 smell or black matter on the surface of one cleft; 2 ragged or undermined horn, or a deep cleft, or two clefts; 3 to the quick.", type: "integer", unit: "grade", level: "foot-visit", required: false, missing: notRecorded, hard: [0, 3], source: "project scale, not a validated one" },
  { name: "thrush_site", title: "Thrush site", meaning: "Which clefts of the frog are affected.", type: "codes", unit: null, level: "foot-visit", required: false, missing: notRecorded, values: ["central_sulcus", "medial_groove", "lateral_groove"] },
  { name: "cleft_depth_mm", title: "Cleft depth", meaning: "Depth of the deepest cleft of the frog.", type: "number", unit: "mm", level: "foot-visit", required: false, missing: notRecorded, soft: [0, 25], hard: [0, 60], source: practice },
  { name: "hoof_width_mm", title: "Hoof width", meaning: "Widest part of the bare ground surface, at right angles to the midline.", type: "number", unit: "mm", level: "foot-visit", required: false, missing: notRecorded, soft: [90, 170], hard: [30, 270], source: practice },
  { name: "hoof_length_mm", title: "Hoof length", meaning: "Tip of the toe to the line across the heel buttresses.", type: "number", unit: "mm", level: "foot-visit", required: false, missing: notRecorded, soft: [90, 180], hard: [30, 280], source: practice },
  { name: "toe_length_mm", title: "Toe length", meaning: "Hairline to ground at mid-toe, along the wall.", type: "number", unit: "mm", level: "foot-visit", required: false, missing: notRecorded, soft: [55, 115], hard: [15, 400], source: practice },
  { name: "heel_height_mm", title: "Heel height", meaning: "Hairline to ground at the heel, vertical.", type: "number", unit: "mm", level: "foot-visit", required: false, missing: notRecorded, soft: [15, 65], hard: [0, 150], source: practice },
  { name: "toe_angle_deg", title: "Toe angle", meaning: "Toe wall to ground plane.", type: "number", unit: "deg", level: "foot-visit", required: false, missing: notRecorded, soft: [42, 62], hard: [20, 100], source: practice },
  { name: "heel_angle_deg", title: "Heel angle", meaning: "Heel tubules to ground plane.", type: "number", unit: "deg", level: "foot-visit", required: false, missing: notRecorded, soft: [25, 65], hard: [5, 100], source: practice },
  { name: "frog_width_mm", title: "Frog width", meaning: "Widest part of the frog, at its base.", type: "number", unit: "mm", level: "foot-visit", required: false, missing: notRecorded, soft: [25, 80], hard: [5, 130], source: practice },
  { name: "frog_length_mm", title: "Frog length", meaning: "Apex to base of the frog.", type: "number", unit: "mm", level: "foot-visit", required: false, missing: notRecorded, soft: [60, 130], hard: [20, 220], source: practice },
  { name: "medial_wall_angle_deg", title: "Medial wall angle", meaning: "Inner quarter wall to ground plane.", type: "number", unit: "deg", level: "foot-visit", required: false, missing: notRecorded, soft: [55, 100], hard: [20, 130], source: practice },
  { name: "lateral_wall_angle_deg", title: "Lateral wall angle", meaning: "Outer quarter wall to ground plane.", type: "number", unit: "deg", level: "foot-visit", required: false, missing: notRecorded, soft: [55, 100], hard: [20, 130], source: practice },
  { name: "flare_site", title: "Flare", meaning: "Where the wall bends away from straight at the ground.", type: "codes", unit: null, level: "foot-visit", required: false, missing: notRecorded, values: ["toe", "medial", "lateral"] },
  { name: "bars", title: "Bars", meaning: "State of the bars.", type: "code", unit: null, level: "foot-visit", required: false, missing: notRecorded, values: ["level", "overgrown", "folded"] },
  { name: "white_line", title: "White line", meaning: "State of the white line.", type: "code", unit: null, level: "foot-visit", required: false, missing: notRecorded, values: ["tight", "stretched", "separated"] },
  { name: "crack_site", title: "Crack site", meaning: "Where the wall is cracked.", type: "codes", unit: null, level: "foot-visit", required: false, missing: notRecorded, values: ["toe", "quarter", "heel"] },
  { name: "crack_from", title: "Crack from", meaning: "Where the crack starts.", type: "code", unit: null, level: "foot-visit", required: false, missing: notRecorded, values: ["ground", "coronet"] },
  { name: "crack_length_mm", title: "Crack length", meaning: "Length of the longest crack along the wall.", type: "number", unit: "mm", level: "foot-visit", required: false, missing: notRecorded, soft: [0, 80], hard: [0, 200], source: practice },
  { name: "mark_kind", title: "Mark on the wall", meaning: "What the measured mark on the wall is.", type: "code", unit: null, level: "foot-visit", required: false, missing: notRecorded, values: ["abscess_track", "ring", "crack"] },
  { name: "mark_below_coronet_mm", title: "Mark below coronet", meaning: "Hairline to the mark, along the wall.", type: "number", unit: "mm", level: "foot-visit", required: false, missing: notRecorded, soft: [0, 110], hard: [0, 400], source: practice },
  { name: "abscess", title: "Abscess", meaning: "An abscess is present at this visit.", type: "boolean", unit: null, level: "foot-visit", required: false, missing: notRecorded },
  { name: "horn_colour", title: "Horn colour", meaning: "Colour of the wall of this foot.", type: "code", unit: null, level: "foot-visit", required: false, missing: notRecorded, values: ["dark", "light", "striped"] },
  { name: "shoe_state", title: "Shoe", meaning: "State of the shoe on arrival.", type: "code", unit: null, level: "foot-visit", required: false, missing: notRecorded, values: ["bare", "tight", "sprung", "lost", "worn"] },
  { name: "work_done", title: "Work done", meaning: "What was done to this foot.", type: "code", unit: null, level: "foot-visit", required: false, missing: notRecorded, values: ["trim", "shoe", "reset", "none"] },
  { name: "surface_treated_7d", title: "Surface treated", meaning: "The frog or wall was dressed or disinfected in the seven days before.", type: "boolean", unit: null, level: "foot-visit", required: false, missing: notRecorded },
  { name: "vet_involved", title: "Vet involved", meaning: "A vet is already seeing this foot.", type: "boolean", unit: null, level: "foot-visit", required: false, missing: notRecorded },
  { name: "next_interval_days", title: "Next interval", meaning: "Days to the next visit, agreed at this one.", type: "integer", unit: "days", level: "visit", required: false, missing: "the horse's planned interval is used", soft: [21, 70], hard: [1, 400], source: practice },
  { name: "note", title: "Note", meaning: "Free text; may name people, so it leaves no page unless asked for.", type: "text", unit: null, level: "foot-visit", required: false, missing: "no note" },
] as const satisfies readonly Column[];
