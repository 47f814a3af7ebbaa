import { did } from "./did.js";
import type { Column } from "../../study/Column.js";
import type { LineFault } from "../text/LineFault.js";
import type { Fault } from "./Fault.js";
import { badCell } from "./badCell.js";
import { cellFault } from "./cellFault.js";
import { delimiterWord } from "./delimiterWord.js";
import { inUnit } from "./inUnit.js";
import { quoted } from "./quoted.js";
import { severities } from "./severities.js";
import { weatherMessages } from "./weatherMessages.js";

const { setAside, blanked, warning } = severities;

const unit = ({ unit }: Column) => (unit === null || unit === "grade" || unit === "year" ? "" : ` ${unit}`);

const lineFaults: Readonly<Record<LineFault, Fault>> = {
  not_utf8: setAside(
    "not_utf8",
    "the line holds bytes that are not UTF-8 text",
    'Save the file again as CSV UTF-8, or say its encoding in study.json, such as "encoding": "windows-1252".',
  ),
  not_utf16: setAside(
    "not_utf16",
    "the line holds half a letter of UTF-16",
    "The file may be cut off or damaged: copy it again.",
  ),
  not_windows_1252: setAside(
    "not_windows_1252",
    "the line holds bytes that Windows-1252 does not have",
    "Check the encoding that study.json states for the file, or save it again as CSV UTF-8.",
  ),
  nul_byte: setAside(
    "nul_byte",
    "the line holds NUL bytes, which no text has",
    "The file may be damaged: copy it again from where it was made.",
  ),
  line_too_long: setAside(
    "line_too_long",
    "the line is longer than a million bytes",
    "Cut the long cell down, or look for a lost line end.",
  ),
  stray_quote: setAside(
    "stray_quote",
    "a double quote opens a cell that is not closed as it should be",
    'Take the stray quote out, or close the cell; a quote inside a quoted cell is written twice: "".',
  ),
};

/** Every fault that reading can find: what it costs, what was found, what to do. */
export const messages = {
  line: (code: LineFault) => lineFaults[code],
  ragged: (found: number, expected: number, delimiter = ",") =>
    setAside(
      "ragged_row",
      `the row has ${found} cells, the header ${expected}`,
      found > expected
        ? `Put a cell that holds a ${delimiterWord(delimiter)} in double quotes.`
        : `Add the missing cells; an empty cell still needs its ${delimiterWord(delimiter)}.`,
    ),
  bareQuote: () =>
    warning(
      "bare_quote",
      "a double quote stands inside a cell that is not quoted; it was kept as it is",
      'Put the cell in quotes and write the quote twice: "".',
    ),

  requiredEmpty: (column: Column) =>
    setAside(
      "required_empty",
      `the cell is empty (${column.missing})`,
      `Fill in ${column.name}; the row cannot be used without it.`,
    ),
  missingWord: (column: Column, text: string) =>
    cellFault(
      column,
      "missing_word",
      `${quoted(text)} stands where a value should be`,
      "Leave a cell empty when nothing is known.",
    ),
  badCell,
  unusual: (column: Column, text: string, converted: string | null = null) =>
    warning(
      "unusual_value",
      `${quoted(text)}${inUnit(column, converted)} lies outside the usual ${column.soft?.join(" to ") ?? ""}${unit(column)}; it was kept`,
      "Check it against the paper record; leave it if it is right.",
    ),
  unitSmell: (column: Column, share: string, example: string, other: { readonly unit: string; readonly name: string }) =>
    warning(
      "unit_smell",
      `${share} look like ${other.name}, such as ${quoted(example)}; nothing was converted`,
      `The column is in ${column.unit ?? ""}: if that is so, say "unit": "${other.unit}" for ${column.name} in study.json, under files.`,
    ),

  unknownColumn: (header: string, nearest: string | null) =>
    warning(
      "unknown_column",
      `the column ${quoted(header)} is not known and was not read`,
      `Rename it if it should be read; see the data dictionary.${did(nearest)}`,
    ),
  unnamedColumn: (position: number) =>
    warning(
      "unnamed_column",
      `column number ${position} has no header and was not read`,
      "Give it a header, or take the column out.",
    ),
  noRows: (row: string) => warning("no_rows", "the file has a header and no rows", `Add rows; one row is ${row}.`),
  fileAbsent: (lost: string) => warning("file_absent", "the file is not there", `Without it ${lost}; add it if that is wanted.`),

  inFuture: (date: string, today: string) =>
    setAside(
      "visit_in_future",
      `the visit on ${date} is after ${today}, the latest day that can be today`,
      "Correct the date; a planned visit is not a record.",
    ),
  notEquine: (horse: string, species: string) =>
    setAside(
      "not_equine",
      `${quoted(horse)} is set aside in horses.csv because its species is ${quoted(species)}`,
      "Only horses, ponies, donkeys and mules have the feet these records describe.",
    ),
  unknownHorse: (horse: string, nearest: string | null) =>
    setAside(
      "unknown_horse",
      `the horse ${quoted(horse)} is not in horses.csv`,
      `Add it to horses.csv or correct the spelling.${did(nearest)}`,
    ),
  beforeBirth: (date: string, year: number) =>
    setAside(
      "before_birth",
      `the visit on ${date} is before the horse's birth year, ${year}`,
      "Correct the date here or the birth year in horses.csv.",
    ),
  beforeGuessedBirth: (date: string, year: number) =>
    warning(
      "before_birth",
      `the visit on ${date} is before the horse's estimated birth year, ${year}; the row was kept`,
      "Correct the date here or the birth year in horses.csv.",
    ),
  outsideStays: (date: string) =>
    warning(
      "outside_stay",
      `on ${date} the horse was at no yard by horses.csv; the row was kept`,
      "Correct the date here, or joined_on and left_on in horses.csv.",
    ),
  duplicate: (what: string, firstFile: string | null, firstLine: number) =>
    setAside(
      "duplicate_row",
      `${what} already stands in ${firstFile === null ? "" : `${firstFile}, `}line ${firstLine}`,
      "Keep the right one of the two and take the other out.",
    ),
  siteWithoutThrush: () =>
    warning(
      "site_without_thrush",
      "thrush_grade is 0 and thrush_site names a cleft; both were kept",
      "Correct the grade, or leave the site empty.",
    ),
  lostFromBare: () =>
    warning(
      "lost_shoe_on_bare_horse",
      "shoe_state is lost and horses.csv says the horse is bare; both were kept",
      "Correct one of the two.",
    ),
  findingNotExamined: () =>
    warning(
      "graded_but_not_examined",
      "examined is no and thrush_grade is filled in; both were kept",
      "Correct one of the two; the foot counts as not seen.",
    ),

  toeLongerAfter: (before: number, after: number, line: number) =>
    warning(
      "toe_longer_after_trim",
      `the toe measures ${after} mm after the trim and ${before} mm before it (the other row is line ${line}); both were kept`,
      "A trim takes off and adds nothing: correct the measure, or the stage of one of the two rows.",
    ),

  leftBeforeJoined: (joined: string, left: string) =>
    blanked(
      "left_before_joined",
      `left_on ${left} is before joined_on ${joined}; left_on counts as empty`,
      "Correct the two dates.",
    ),
  overlappingStays: (line: number) =>
    warning(
      "overlapping_stays",
      `the stay overlaps the horse's stay in line ${line}; both were kept`,
      "Fill in joined_on and left_on so that a horse is at one yard at a time.",
    ),
  bornInFuture: (year: number) =>
    blanked(
      "birth_year_in_future",
      `the birth year ${year} is still to come; the cell counts as empty`,
      "Correct the birth year.",
    ),
  unknownYard: (yard: string, nearest: string | null) =>
    warning(
      "unknown_yard",
      `the yard ${quoted(yard)} is not in yards.csv; the row was kept`,
      `Add it to yards.csv or correct the spelling.${did(nearest)}`,
    ),
  unknownGauge: (gauge: string, nearest: string | null) =>
    warning(
      "unknown_gauge",
      `there are no readings of gauge ${quoted(gauge)}; the yard has no rain`,
      `Add its readings or correct the spelling.${did(nearest)}`,
    ),

  ...weatherMessages,
};
