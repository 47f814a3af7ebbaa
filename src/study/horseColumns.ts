import type { Column } from "./Column.js";

const notRecorded = "not recorded";
const practice = "common practice, no source";

/** Columns of `horses.csv`: one row per horse, and one more for each later stay when a horse moves yard. */
// prettier-ignore
/** @private */
export const horseColumns = [
  { name: "horse_id", title: "Horse", meaning: "Short name or code of the horse.", type: "id", unit: null, level: "horse", required: true, missing: "row belongs to no horse" },
  { name: "yard_id", title: "Yard", meaning: "Yard where the horse stands during this stay.", type: "id", unit: null, level: "horse", required: false, missing: "yard unknown; left out of yard comparisons" },
  { name: "species", title: "Species", meaning: "horse, pony, donkey or mule. Any other animal is set aside. Horse thresholds are used for horses and ponies only.", type: "code", unit: null, level: "horse", required: false, missing: "taken as horse", values: ["horse", "pony", "donkey", "mule"] },
  { name: "type", title: "Type", meaning: "Breed or type, in the keeper's words.", type: "text", unit: null, level: "horse", required: false, missing: notRecorded },
  { name: "birth_year", title: "Birth year", meaning: "Year of birth.", type: "integer", unit: "year", level: "horse", required: false, missing: notRecorded, hard: [1900, 2100], source: practice },
  { name: "birth_year_estimated", title: "Birth year estimated", meaning: "The birth year is a guess.", type: "boolean", unit: null, level: "horse", required: false, missing: "taken as known" },
  { name: "sex", title: "Sex", meaning: "Sex of the horse.", type: "code", unit: null, level: "horse", required: false, missing: notRecorded, values: ["mare", "gelding", "stallion"] },
  { name: "height_cm", title: "Height", meaning: "Height at the withers.", type: "number", unit: "cm", level: "horse", required: false, missing: notRecorded, soft: [85, 180], hard: [40, 225], source: practice },
  { name: "weight_kg", title: "Weight", meaning: "Weighed or taped body weight.", type: "number", unit: "kg", level: "horse", required: false, missing: notRecorded, soft: [150, 900], hard: [20, 1600], source: practice },
  { name: "shod", title: "Shod", meaning: "Usual state: bare, shoes on the front feet only, or on all four.", type: "code", unit: null, level: "horse", required: false, missing: notRecorded, values: ["bare", "fronts", "all"] },
  { name: "use", title: "Use", meaning: "Work of the horse, in the keeper's words.", type: "text", unit: null, level: "horse", required: false, missing: notRecorded },
  { name: "planned_interval_days", title: "Planned interval", meaning: "Agreed days between routine visits.", type: "integer", unit: "days", level: "horse", required: false, missing: "no plan; the horse is left out of interval keeping", soft: [21, 70], hard: [7, 183], source: practice },
  { name: "joined_on", title: "Joined on", meaning: "First day of this stay.", type: "date", unit: null, level: "horse", required: false, missing: "from the first record on" },
  { name: "left_on", title: "Left on", meaning: "Last day of this stay.", type: "date", unit: null, level: "horse", required: false, missing: "still there" },
] as const satisfies readonly Column[];
