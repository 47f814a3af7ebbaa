import type { Column } from "../../study/Column.js";
import { cellFault } from "./cellFault.js";
import type { Fault } from "./Fault.js";
import { inUnit } from "./inUnit.js";
import { nearestName } from "../../study/nearestName.js";
import { quoted } from "./quoted.js";

/** What the mapping of a column adds to the words about its cells. */
export interface CellWords {
  /** The number in the unit of the column, when it was converted. */
  readonly converted?: string | null;
  readonly hint?: string | null;
}

/** The fault of a cell whose text is not what its column holds; `issue` is the code of the check that it failed. */
export function badCell(column: Column, text: string, issue: string, { converted = null, hint = null }: CellWords = {}): Fault {
  switch (column.type) {
    case "date":
      return cellFault(
        column,
        "bad_date",
        `${quoted(text)} is not a calendar day`,
        hint ?? "Write dates as year-month-day, such as 2024-03-05, or say their order in study.json: none is guessed.",
      );
    case "number":
    case "integer":
      return badNumber(column, text, issue, { converted, hint });
    case "boolean":
      return cellFault(
        column,
        "bad_yes_no",
        `${quoted(text)} is neither yes nor no`,
        'Write yes or no, or say under "words" in study.json which it means.',
      );
    case "id":
    case "text":
      return cellFault(column, "bad_name", `${quoted(text)} is longer than a name can be`, "Use a short name or code.");
    case "code":
    case "codes":
      return badCode(column, text);
  }
}

const unit = ({ unit }: Column) => (unit === null || unit === "grade" || unit === "year" ? "" : ` ${unit}`);

const MISSING_CODE = /^-9+(\.9+|\.0+)?$/;

function badNumber(column: Column, text: string, issue: string, { converted = null, hint = null }: CellWords): Fault {
  if (issue === "too_small" && MISSING_CODE.test(text)) {
    return cellFault(
      column,
      "missing_code",
      `${quoted(text)} is a code for a missing value`,
      "Leave a cell empty when nothing is known.",
    );
  }
  if (issue === "too_small" || issue === "too_big") {
    const range = `${column.hard?.join(" to ") ?? ""}${unit(column)}`;
    return cellFault(
      column,
      "out_of_range",
      `${quoted(text)}${inUnit(column, converted)} cannot be right: only ${range} is believed`,
      "Check the value and its unit.",
    );
  }
  const whole = column.type === "integer" && issue !== "invalid_format";
  if (whole) return cellFault(column, "not_whole", `${quoted(text)} is not a whole number`, "Write a whole number.");
  const word = 'Write a number, or say under "words" in study.json what it means.';
  if (!/\d/.test(text)) return cellFault(column, "not_a_number", `${quoted(text)} is not a number`, word);
  const usual = /^-?\d+,\d+$/.test(text)
    ? 'Write a decimal point, or say "decimal": "," in study.json.'
    : `Write a number alone, without its unit${unit(column) === "" ? "" : ` (${column.unit ?? ""})`}.`;
  return cellFault(column, "not_a_number", `${quoted(text)} is not a number`, hint ?? usual);
}

function badCode(column: Column, text: string): Fault {
  const values = column.values ?? [];
  const several = column.type === "codes" ? "; several are separated by a semicolon" : "";
  if (column.name === "foot") {
    const claw = /claw|cloven|digit/i.test(text);
    const hint = claw
      ? "A cloven foot is not described by these records: leave the animal out."
      : "Write LF, RF, LH or RH (or NF, OF, NH, OH); F or H for a specimen of unknown side, U for one of unknown end, LF_specimen for one of known side.";
    return cellFault(column, "unknown_foot", `${quoted(text)} is no foot of a horse`, hint);
  }
  if (column.name === "species") {
    const nearest = nearestName(text, values);
    return {
      code: "not_equine",
      severity: "set_aside",
      found: `the species ${quoted(text)} is none of horse, pony, donkey and mule`,
      hint: `Leave out animals of other kinds; their feet are not described by these records.${nearest === null ? "" : ` Was ${quoted(nearest)} meant?`}`,
    };
  }
  return cellFault(
    column,
    "unknown_code",
    `${quoted(text)} is not a known word of this column`,
    `Use ${values.join(", ")}${several}. Or say under "words" in study.json what it means.`,
  );
}
