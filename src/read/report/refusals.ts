import { StudyError } from "../../study/StudyError.js";
import { delimiterWord } from "./delimiterWord.js";
import { quoted } from "./quoted.js";

const did = (nearest: string | null) => (nearest === null ? "" : ` Was ${quoted(nearest)} meant?`);
const SHOWN_HEADERS = 40;
const SHOWN_QUESTIONS = 8;

/** A header that lacks what it must have. */
interface MissingHeader {
  readonly file: string;
  readonly missing: readonly string[];
  readonly found: readonly string[];
  readonly nearest: string | null;
  readonly delimiter: string;
}

/** Every reason to give up on a study, as the error to throw. */
export const refusals = {
  badToday: (today: string) =>
    new StudyError(
      "bad_today",
      `The option today is ${quoted(today)}, which is not a calendar day.`,
      "Give it as year-month-day, such as 2024-03-05.",
    ),
  folderMissing: (folder: string) =>
    new StudyError(
      "folder_missing",
      `${folder}: there is no such folder.`,
      "Check the path; a new study folder can be made with `underfoot new`.",
    ),
  notAFolder: (folder: string) =>
    new StudyError(
      "not_a_folder",
      `${folder}: this is a file, not a folder.`,
      "Name the folder that holds study.json and visits.csv.",
    ),
  fileMissing: (file: string, nearest: string | null) =>
    new StudyError(
      "file_missing",
      `${file}: the file is not in the study folder.`,
      `Every study needs study.json and visits.csv, and each file that study.json names.${did(nearest)}${file === "study.json" ? " `underfoot new` makes an empty study; beside files of your own `underfoot draft` proposes one." : ""}`,
    ),
  notAFile: (file: string) =>
    new StudyError("not_a_file", `${file}: this is not an ordinary file.`, "Put a file of this name in its place."),
  unreadable: (file: string, reason: string) =>
    new StudyError(
      "file_unreadable",
      `${file}: the file cannot be read (${reason}).`,
      "Check who may read it, and that no other program holds it.",
    ),
  outsideFolder: (file: string, leadsTo: string | null) =>
    new StudyError(
      "file_outside_folder",
      leadsTo === null
        ? `${file}: the name leads out of the study folder.`
        : `${file}: the link leads out of the study folder, to ${leadsTo}.`,
      "Copy the file itself into the study folder.",
    ),
  linkLoop: (file: string) =>
    new StudyError(
      "file_unreadable",
      `${file}: the file cannot be read (ELOOP): it is a symbolic link that leads back to itself.`,
      "Take the link away and put the file itself in its place.",
    ),
  unanswered: (paths: readonly string[]) =>
    new StudyError(
      "unanswered",
      `study.json: ${paths.length === 1 ? "a question is" : `${paths.length} questions are`} not answered yet: ${paths.slice(0, SHOWN_QUESTIONS).join("; ")}.`,
      "Put the answer in the place of null; nothing is guessed. To leave a column out, take its whole line away.",
    ),
  notText: (file: string, what: string, hint: string) =>
    new StudyError("not_csv_text", `${file}: this is ${what}, not UTF-8 text.`, hint),
  encodingContradicted: (file: string, stated: string, marked: string | null) =>
    new StudyError(
      "not_csv_text",
      marked === null
        ? `${file}: study.json says ${stated}, and the file does not begin with the byte order mark of it.`
        : `${file}: study.json says ${stated}, and the file begins with the mark of ${marked}.`,
      marked === null ? "Save it again as CSV UTF-8." : "Take the encoding out of study.json: the mark says it.",
    ),
  empty: (file: string) => new StudyError("file_empty", `${file}: the file is empty.`, "The first line must name the columns."),
  headerUnreadable: (file: string, line: number, found: string) =>
    new StudyError(
      "header_unreadable",
      `${file}, line ${line}: the header cannot be read, ${found}.`,
      "The first line must name the columns, separated by commas, or by the delimiter that study.json states.",
    ),
  headerDuplicate: (file: string, column: string, headers: readonly string[]) =>
    new StudyError(
      "header_duplicate",
      `${file}: the column ${column} stands in the header twice, as ${headers.map(quoted).join(" and ")}.`,
      "Rename or take out one of the two, or name the right one in study.json.",
    ),
  headerMissing({ file, missing, found, nearest, delimiter }: MissingHeader): StudyError {
    const shown = found.slice(0, SHOWN_HEADERS).map(quoted).join(", ");
    const other =
      found.length === 1 ? ([";", "\t", "|", ","].find((mark) => mark !== delimiter && found[0]?.includes(mark)) ?? null) : null;
    const hint =
      other === null
        ? `Add or rename the column, or name its header in study.json under "files"; \`underfoot draft\` proposes how.${did(nearest)}`
        : `The cells seem to be parted by ${other === "\t" ? "tabs" : `${delimiterWord(other)}s`}: say "delimiter": "${other === "\t" ? "tab" : other}" for the file in study.json, or run \`underfoot draft\`.`;
    return new StudyError("header_missing", `${file}: the header lacks ${missing.join(", ")}; found ${shown}.`, hint);
  },
  badJson: (line: number, column: number, found: string) =>
    new StudyError(
      "bad_json",
      `study.json, line ${line}, column ${column}: the text stops being JSON at ${found}.`,
      "Mend the comma, quote or bracket there or just before.",
    ),
  badStudy: (faults: readonly string[], hint: string) =>
    new StudyError("bad_study_json", `study.json: ${faults.join("; ")}.`, hint),
  severalStations: (file: string, stations: readonly string[]) =>
    new StudyError(
      "several_stations",
      `${file}: the file holds the stations ${stations.join(", ")}, and study.json gives it one gauge.`,
      'Take "gauge" out of study.json and use the station names as gauge_id, or split the file.',
    ),
};
