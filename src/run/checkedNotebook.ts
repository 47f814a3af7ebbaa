import { StudyError } from "../study/StudyError.js";
import { isJsonMime } from "./isJsonMime.js";
import type { Notebook, NotebookCell, NotebookOutput } from "./Notebook.js";

type Json = Readonly<Record<string, unknown>>;

const isObject = (value: unknown): value is Json => typeof value === "object" && value !== null && !Array.isArray(value);

function refuse(found: string, hint = "Open it in Jupyter and save it again."): never {
  throw new StudyError("bad_notebook", `This is not a Jupyter notebook that can be used: ${found}.`, hint);
}

/** A string, or the list of lines the format allows in its place. */
function joined(value: unknown, where: string): string {
  if (typeof value === "string") return value;
  if (Array.isArray(value) && value.every((line) => typeof line === "string")) return value.join("");
  return refuse(`${where} is neither text nor a list of lines`);
}

const objectOr = (value: unknown, otherwise: Json): Json => (isObject(value) ? value : otherwise);

function bundle(value: unknown, where: string): Json {
  const text = (mime: string, data: unknown) => (isJsonMime(mime) ? data : joined(data, `${where}, ${mime},`));
  return Object.fromEntries(Object.entries(objectOr(value, {})).map(([mime, data]) => [mime, text(mime, data)]));
}

function output(value: unknown, where: string): NotebookOutput {
  if (!isObject(value)) return refuse(`${where} is no object`);
  const kind = value["output_type"];
  if (kind === "stream") {
    return { output_type: kind, name: String(value["name"]), text: joined(value["text"], where) };
  }
  const shown = { data: bundle(value["data"], where), metadata: objectOr(value["metadata"], {}) };
  if (kind === "display_data") return { output_type: kind, ...shown };
  if (kind === "execute_result") {
    const count = value["execution_count"];
    return { output_type: kind, execution_count: typeof count === "number" ? count : null, ...shown };
  }
  if (kind === "error") {
    const traceback = Array.isArray(value["traceback"]) ? value["traceback"].map(String) : [];
    return { output_type: kind, ename: String(value["ename"]), evalue: String(value["evalue"]), traceback };
  }
  return refuse(`${where} is of the unknown kind "${String(kind)}"`);
}

function cell(value: unknown, id: string, where: string): NotebookCell {
  if (!isObject(value)) return refuse(`${where} is no object`);
  const kind = value["cell_type"];
  const all = { id, metadata: objectOr(value["metadata"], {}), source: joined(value["source"], `the source of ${where}`) };
  if (kind === "code") {
    const outputs = Array.isArray(value["outputs"]) ? value["outputs"] : [];
    const count = value["execution_count"];
    return {
      cell_type: kind,
      ...all,
      outputs: outputs.map((item, i) => output(item, `output ${i + 1} of ${where}`)),
      execution_count: typeof count === "number" ? count : null,
    };
  }
  if (kind !== "markdown" && kind !== "raw") return refuse(`${where} is of the unknown kind "${String(kind)}"`);
  if (!isObject(value["attachments"])) return { cell_type: kind, ...all };
  const files = Object.entries(value["attachments"]);
  return { cell_type: kind, ...all, attachments: Object.fromEntries(files.map(([name, data]) => [name, bundle(data, where)])) };
}

/** The ids of the cells; where one is lacking, repeated or not allowed, one made from the place of the cell. */
function cellIds(cells: readonly unknown[]): string[] {
  const found = cells.map((item) => (isObject(item) ? item["id"] : null));
  const sound = (id: unknown): id is string => typeof id === "string" && /^[a-zA-Z0-9-_]{1,64}$/.test(id);
  const taken = new Set(found.filter(sound));
  const used = new Set<string>();
  return found.map((id, i) => {
    let chosen = sound(id) && !used.has(id) ? id : `cell-${i + 1}`;
    while (used.has(chosen) || (chosen !== id && taken.has(chosen))) chosen += "-";
    used.add(chosen);
    return chosen;
  });
}

/**
 * A notebook from parsed JSON: nbformat 4.0 to 4.5 and later minors come out as 4.5, with ids for cells that had none and
 * with lists of lines joined. Nothing of the input is changed.
 *
 * @throws StudyError `bad_notebook`, with what was found and where.
 *
 * @private
 */
export function checkedNotebook(value: unknown): Notebook {
  if (!isObject(value)) return refuse("its content is no object");
  const [major, minor, cells] = [value["nbformat"], value["nbformat_minor"], value["cells"]];
  if (major !== 4)
    return refuse(`its format is version ${String(major)}, not 4`, "Open it in a current Jupyter and save it again.");
  if (!Array.isArray(cells)) return refuse("it has no list of cells");
  const ids = cellIds(cells);
  return {
    nbformat: 4,
    nbformat_minor: typeof minor === "number" && minor > 5 ? minor : 5,
    metadata: objectOr(value["metadata"], {}),
    cells: cells.map((item, i) => cell(item, ids[i] ?? "", `cell ${i + 1}`)),
  };
}
