import { StudyError } from "../../study/StudyError.js";
import { quoted } from "./quoted.js";

const did = (nearest: string | null) => (nearest === null ? "" : ` Was ${quoted(nearest)} meant?`);
const SHOWN_HEADERS = 40;

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
      `Every study needs study.json and visits.csv, and each file that study.json names.${did(nearest)}`,
    ),
  notAFile: (file: string) =>
    new StudyError("not_a_file", `${file}: this is not an ordinary file.`, "Put a file of this name in its place."),
  unreadable: (file: string, reason: string) =>
    new StudyError(
      "file_unreadable",
      `${file}: the file cannot be read (${reason}).`,
      "Check who may read it, and that no other program holds it.",
    ),
  outsideFolder: (file: string) =>
    new StudyError(
      "file_outside_folder",
      `study.json, weather: ${quoted(file)} lies outside the study folder.`,
      "Copy the file into the study folder and name it without a path that leads out.",
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
      "The first line must name the columns, separated by commas.",
    ),
  headerDuplicate: (file: string, column: string) =>
    new StudyError(
      "header_duplicate",
      `${file}: the column ${column} stands in the header twice.`,
      "Rename or take out one of the two.",
    ),
  headerMissing(file: string, missing: readonly string[], found: readonly string[], nearest: string | null): StudyError {
    const shown = found.slice(0, SHOWN_HEADERS).map(quoted).join(", ");
    const semicolons = found.length === 1 && /[;\t]/.test(found[0] ?? "");
    const hint = semicolons
      ? "The file seems to be separated by semicolons or tabs: save it with commas."
      : `Add or rename the column.${did(nearest)}`;
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
