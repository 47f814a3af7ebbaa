import type { Column } from "../study/Column.js";
import type { FileLayout, InputFile } from "../study/DataReport.js";
import { fileTables } from "../study/fileTables.js";
import type { Study } from "../study/Study.js";

/** A descriptor after the Data Package standard, version 2. */
export type DataPackage = Readonly<Record<string, unknown>>;

const PROFILE = "https://datapackage.org/profiles/2.0/datapackage.json";
const NOTICE = "It describes records. It is not a diagnosis and not advice to trim, shoe, medicate or change an interval.";

/** Columns that together tell the rows of a table apart; cells of them may be empty. */
const keys: Readonly<Record<string, readonly string[]>> = {
  visits: ["visit_date", "horse_id", "foot", "stage", "observer_id"],
  horses: ["horse_id", "joined_on"],
  yards: ["yard_id"],
  changes: ["yard_id", "changed_on", "what"],
  weather: ["gauge_id", "date"],
  outlines: ["horse_id", "visit_date", "foot", "stage", "tracing", "ring", "point"],
};

const links: readonly { readonly from: string; readonly to: string; readonly column: string }[] = [
  { from: "visits", to: "horses", column: "horse_id" },
  { from: "outlines", to: "horses", column: "horse_id" },
  { from: "horses", to: "yards", column: "yard_id" },
  { from: "changes", to: "yards", column: "yard_id" },
];

/**
 * The descriptor `datapackage.json` of a study folder after the Data Package standard, version 2.0 (datapackage.org): every file that was read with its size, SHA-256,
 * encoding and dialect, and for each table its fields with type, meaning, limits, what an empty cell means, the columns that tell rows apart and links between tables.
 *
 * It describes the files as they lie there, rows that were set aside among them, so that its limits say what is believed and not that every row keeps to them. A column
 * that `study.json` has converted or translated is described as text, with what is done to it. The same study gives the same descriptor.
 */
export function toDataPackage(study: Pick<Study, "name" | "report">): DataPackage {
  const { inputs } = study.report;
  const names = namesOf(inputs);
  return {
    $schema: PROFILE,
    name: nameOf(study.name),
    title: study.name,
    description: `A study folder of records of horses' feet. ${NOTICE}`,
    resources: inputs.map((input, index) => resource(input, names[index] ?? "", inputs, names)),
  };
}

function resource(input: InputFile, name: string, inputs: readonly InputFile[], names: readonly string[]): DataPackage {
  const { file, kind, bytes, sha256, headers, layout } = input;
  const table = fileTables.find((each) => each.kind === kind);
  const common = { name, path: file.replaceAll("\\", "/").replace(/^(\.\/)+/, ""), bytes, hash: `sha256:${sha256}` };
  if (kind === "study") return { ...common, format: "json", mediatype: "application/json", encoding: "utf-8" };
  if (table === undefined || headers === undefined)
    return { ...common, description: "Readings or a list in the format of their source." };
  const delimiter = delimiters[layout?.delimiter ?? "comma"] ?? ",";
  const fields = headers.map((header) => field(header, columnOf(header, table.columns, layout), layout));
  const plain = new Set(fields.flatMap(({ column, name: header }) => (column === header ? [header] : [])));
  const key = (keys[kind] ?? []).filter((column) => plain.has(column));
  const whole = table.columns.filter(({ required }) => required).every(({ name: column }) => plain.has(column));
  const foreign = links.flatMap(({ from, to, column }) => {
    const others = inputs.flatMap((other, index) =>
      other.kind === to && other.layout === undefined ? [names[index] ?? ""] : [],
    );
    const [only] = others;
    if (from !== kind || !plain.has(column) || only === undefined || others.length > 1) return [];
    return [{ fields: [column], reference: { resource: only, fields: [column] } }];
  });
  return {
    ...common,
    type: "table",
    title: `One row: ${table.row}`,
    format: "csv",
    mediatype: "text/csv",
    encoding: layout?.encoding ?? "utf-8",
    dialect: { delimiter, header: true, quoteChar: '"', doubleQuote: true },
    schema: {
      fieldsMatch: ["exact"],
      fields: fields.map(({ column: _, ...rest }) => rest),
      missingValues: [""],
      ...(whole && key.length > 0 && layout === undefined ? { uniqueKeys: [key] } : {}),
      ...(foreign.length > 0 ? { foreignKeys: foreign } : {}),
    },
  };
}

const delimiters: Readonly<Record<string, string>> = { comma: ",", semicolon: ";", tab: "\t", "upright stroke": "|" };

interface Field {
  readonly name: string;
  /** Column of the table; null for one that is none, or that is not read as it stands. */
  readonly column: string | null;
  readonly [key: string]: unknown;
}

function columnOf(header: string, columns: readonly Column[], layout: FileLayout | undefined): Column | undefined {
  const use = layout?.columns.find(({ headers }) => headers.includes(header));
  const name = use === undefined ? header.toLowerCase().replace(/[\s-]+/g, "_") : use.column;
  return columns.find((column) => column.name === name);
}

function field(header: string, column: Column | undefined, layout: FileLayout | undefined): Field {
  if (column === undefined)
    return { name: header, column: null, type: "any", description: "Not one of the columns that are read." };
  const as = layout?.columns.find(({ headers }) => headers.includes(header))?.as ?? null;
  const unit = column.unit === null || as !== null ? {} : { unit: column.unit };
  const described = `${column.meaning}${column.values === undefined ? "" : ` One of ${column.values.join(", ")}.`}`;
  const common = { name: header, column: as === null && header === column.name ? header : null, title: column.title };
  const missingValues = [{ value: "", label: column.missing }];
  if (as !== null)
    return { ...common, type: "string", description: `${described} Read as ${column.name}: ${as}.`, missingValues };
  return { ...common, ...typeOf(column), ...unit, description: described, missingValues };
}

function typeOf({ type, hard, required }: Column): Readonly<Record<string, unknown>> {
  const limits = { ...(required ? { required } : {}), ...(hard === undefined ? {} : { minimum: hard[0], maximum: hard[1] }) };
  const constraints = Object.keys(limits).length === 0 ? {} : { constraints: limits };
  switch (type) {
    case "date":
      return { type: "date", format: "default", ...constraints };
    case "number":
    case "integer":
      return { type, ...constraints };
    case "boolean":
      return { type, trueValues: ["yes", "true", "y", "1"], falseValues: ["no", "false", "n", "0"] };
    // The profile has no list of strings.
    case "codes":
    case "code":
    case "id":
    case "text":
      return { type: "string", ...constraints };
  }
}

/** A name for each file, no two alike. */
function namesOf(inputs: readonly InputFile[]): string[] {
  const taken = new Map<string, number>();
  return inputs.map(({ file }) => {
    const name = nameOf(file.replace(/\.(csv|json)$/i, ""));
    const count = (taken.get(name) ?? 0) + 1;
    taken.set(name, count);
    return count === 1 ? name : `${name}-${count}`;
  });
}

function nameOf(text: string): string {
  const plain = text
    .normalize("NFD")
    .toLowerCase()
    .replace(/\p{M}/gu, "")
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "");
  return plain === "" ? "study" : plain;
}
