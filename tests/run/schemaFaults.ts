import Ajv from "ajv-draft-04";
import { readFileSync } from "node:fs";
import type { Notebook } from "../../src/run/Notebook.js";

const schema = JSON.parse(
  readFileSync(`${import.meta.dirname}/../reference/nbformat/nbformat.v4.5.schema.json`, "utf8"),
) as object;
// Not strict: the schema has two keywords of its own ("item", "source_hidden").
const validate = new Ajv.default({ strict: false }).compile(schema);

/** What the official nbformat 4.5 schema has against a notebook. */
export function schemaFaults(notebook: Notebook | null): unknown[] {
  return validate(notebook) ? [] : (validate.errors ?? ["refused without a reason"]);
}
