import type { Column } from "./Column.js";

const notRecorded = "not recorded";

/** Columns of `yards.csv`: one row per yard. Owners and addresses have no column, on purpose. */
// prettier-ignore
/** @private */
export const yardColumns = [
  { name: "yard_id", title: "Yard", meaning: "Short name or code of the yard.", type: "id", unit: null, level: "yard", required: true, missing: "row belongs to no yard" },
  { name: "gauge_id", title: "Gauge", meaning: "Rain gauge that stands for this yard.", type: "id", unit: null, level: "yard", required: false, missing: "no rainfall can be given to this yard" },
  { name: "gauge_km", title: "Distance to gauge", meaning: "Distance from the yard to its gauge.", type: "number", unit: "km", level: "yard", required: false, missing: notRecorded, soft: [0, 25], hard: [0, 500], source: "common practice, no source" },
  { name: "ground", title: "Ground", meaning: "Ground of the fields, in the keeper's words.", type: "text", unit: null, level: "yard", required: false, missing: notRecorded },
  { name: "bedding", title: "Bedding", meaning: "Bedding of the stables, in the keeper's words.", type: "text", unit: null, level: "yard", required: false, missing: notRecorded },
  { name: "turnout_hours", title: "Turnout", meaning: "Usual hours a day out of the stable.", type: "number", unit: "hours a day", level: "yard", required: false, missing: notRecorded, hard: [0, 24], source: "a day has 24 hours" },
] as const satisfies readonly Column[];
