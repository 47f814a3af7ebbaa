import { nearestName } from "../../study/nearestName.js";
import { StudyError } from "../../study/StudyError.js";
import type { CodeCell, Notebook, NotebookCell } from "../Notebook.js";
import { type NotebookParameter, notebookParameters } from "./notebookParameters.js";
import type { ParameterValue, PlainValue } from "./ParameterValue.js";

const injectedTag = "injected-parameters";

const kindOf = (value: PlainValue) => (value === null ? "null" : typeof value);

/** What a value is, in words that can follow "is". */
function described(value: ParameterValue): string {
  if (value === null) return "null";
  if (typeof value === "string") return `the text ${JSON.stringify(value)}`;
  return typeof value === "object" ? `the list ${JSON.stringify(value)}` : `the ${typeof value} ${String(value)}`;
}

function isPlain(value: unknown): value is PlainValue {
  return value === null || typeof value === "string" || typeof value === "boolean" || Number.isFinite(value);
}

/** Whether a value may stand in the place of the one in the notebook. A null or an empty list there leaves the kind open. */
function fits(value: ParameterValue, before: ParameterValue): boolean {
  if (Array.isArray(value)) {
    if (!value.every(isPlain)) return false;
    if (before === null) return true;
    const kinds = new Set(Array.isArray(before) ? before.map(kindOf) : []);
    return Array.isArray(before) && (kinds.size === 0 || value.every((item) => kinds.has(kindOf(item))));
  }
  if (!isPlain(value)) return false;
  return before === null || (!Array.isArray(before) && kindOf(value) === kindOf(before as PlainValue));
}

function line(parameter: NotebookParameter, value: ParameterValue): string {
  const type = parameter.annotation === null ? "" : `: ${parameter.annotation}`;
  const text = Array.isArray(value) ? `[${value.map((item) => JSON.stringify(item)).join(", ")}]` : JSON.stringify(value);
  return `const ${parameter.name}${type} = ${text};`;
}

function injectedLine(name: string, value: ParameterValue, parameters: readonly NotebookParameter[]): string {
  const parameter = parameters.find((item) => item.name === name);
  if (parameter === undefined) {
    const names = parameters.map((item) => item.name);
    const nearest = nearestName(name, names);
    throw new StudyError(
      "unknown_parameter",
      `The notebook has no parameter "${name}"; it has ${names.length === 0 ? "none" : names.join(", ")}.`,
      nearest === null ? "Give only parameters that the notebook has." : `Did you mean "${nearest}"?`,
    );
  }
  // A type that allows null is the one way to say that null may be given in place of a value.
  const nullable = value === null && /\bnull\b/.test(parameter.annotation ?? "");
  if (!nullable && !fits(value, parameter.value)) {
    throw new StudyError(
      "wrong_parameter",
      `The parameter "${name}" cannot be ${described(value)}: in the notebook it is ${described(parameter.value)}.`,
      "Give a value of the same kind.",
    );
  }
  return line(parameter, value);
}

function freshId(cells: readonly NotebookCell[]): string {
  let id = injectedTag;
  while (cells.some((cell) => cell.id === id)) id += "-";
  return id;
}

/**
 * The notebook with other values for its parameters. The cell tagged `parameters` stays as it is, so that the reader sees
 * the usual values; a cell tagged `injected-parameters` after it declares the names again with the values of this run, which
 * the kernel allows. One left there by an earlier run is replaced. Without values the notebook comes back unchanged.
 *
 * @throws StudyError `no_parameters`, `unknown_parameter` or `wrong_parameter`.
 */
export function withParameters(notebook: Notebook, values: Readonly<Record<string, ParameterValue>>): Notebook {
  const entries = Object.entries(values);
  if (entries.length === 0) return notebook;
  const { cell, parameters } = notebookParameters(notebook);
  if (cell === null) {
    throw new StudyError(
      "no_parameters",
      `The notebook takes no parameters, so ${entries.map(([name]) => `"${name}"`).join(", ")} cannot be set.`,
      'Put the values to be set into one code cell, as lines "const name = value;", and give it the tag "parameters".',
    );
  }
  const lines = entries.map(([name, value]) => injectedLine(name, value, parameters));
  const isInjected = (item: NotebookCell) => Array.isArray(item.metadata["tags"]) && item.metadata["tags"].includes(injectedTag);
  const others = notebook.cells.filter((item) => !isInjected(item));
  const injected: CodeCell = {
    cell_type: "code",
    id: freshId(others),
    metadata: { tags: [injectedTag] },
    source: ["// Set for this run, in place of the values above.", ...lines].join("\n"),
    outputs: [],
    execution_count: null,
  };
  return { ...notebook, cells: others.flatMap((item) => (item === cell ? [item, injected] : [item])) };
}
