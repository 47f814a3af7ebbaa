import { fileTables } from "../study/fileTables.js";

/** A text file to be written, by its path in the study folder. */
export interface NewFile {
  readonly path: string;
  readonly text: string;
}

/**
 * The files of an empty study: `study.json` with what must be decided left open as null, and one CSV file per table that holds its header only.
 * Nothing is written; `study.schema.json`, which `study.json` points editors to, is `studySchema`. The folder can be read as it is; `whatToFillIn` says what it still needs.
 */
export function newStudyFiles(name: string): readonly NewFile[] {
  const study = { $schema: "./study.schema.json", name, gaugeDay: null, asOf: null, settings: {}, weather: [] };
  const tables = fileTables.map(({ file, columns }) => ({
    path: file,
    text: `${columns.map((column) => column.name).join(",")}\n`,
  }));
  return [{ path: "study.json", text: `${JSON.stringify(study, null, 2)}\n` }, ...tables];
}
