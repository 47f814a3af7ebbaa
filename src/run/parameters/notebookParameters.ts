import { StudyError } from "../../study/StudyError.js";
import type { CodeCell, Notebook, NotebookCell } from "../Notebook.js";
import { literalValue } from "./literalValue.js";
import type { ParameterValue } from "./ParameterValue.js";

/** One value a notebook lets its reader set. */
export interface NotebookParameter {
  readonly name: string;
  /** Type written after the name, such as `string | null`; null when none is written. */
  readonly annotation: string | null;
  readonly value: ParameterValue;
}

/** The parameters of a notebook and the cell that holds them. */
export interface NotebookParameters {
  /** Null when the notebook has no such cell. */
  readonly cell: CodeCell | null;
  /** In the order they are written. */
  readonly parameters: readonly NotebookParameter[];
}

const hasTag = (cell: NotebookCell, tag: string) => Array.isArray(cell.metadata["tags"]) && cell.metadata["tags"].includes(tag);

function parameterOf(line: string): NotebookParameter | null {
  const declared = /^\s*(?:const|let)\s+([A-Za-z_$][\w$]*)\s*(?::([^=]+))?=\s*(.*)$/.exec(line);
  const [, name, annotation, text] = declared ?? [];
  if (name === undefined || text === undefined) return null;
  const literal = literalValue(text);
  // Anything but a semicolon and a comment after the value means that the value is part of a computation.
  if (literal === null || !/^\s*;?\s*(\/\/.*)?$/.test(literal.rest)) return null;
  return { name, annotation: annotation?.trim() ?? null, value: literal.value };
}

/**
 * The values a notebook lets its reader set: the lines `const name = value;` (or `let`, with or without a type) of the code
 * cell tagged `parameters`, where the value is a string, a number, `true`, `false`, `null` or a list of those on one line.
 * Other lines of that cell are no parameters.
 *
 * @throws StudyError `bad_notebook` when more than one cell has the tag.
 */
export function notebookParameters(notebook: Notebook): NotebookParameters {
  const cells = notebook.cells.filter((cell): cell is CodeCell => cell.cell_type === "code" && hasTag(cell, "parameters"));
  if (cells.length > 1) {
    throw new StudyError(
      "bad_notebook",
      `The notebook has ${cells.length} cells with the tag "parameters".`,
      "Take the tag away from all but one of them.",
    );
  }
  const [cell] = cells;
  if (cell === undefined) return { cell: null, parameters: [] };
  return { cell, parameters: cell.source.split("\n").flatMap((line) => parameterOf(line) ?? []) };
}
