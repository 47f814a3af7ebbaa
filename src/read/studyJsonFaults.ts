import { defaultSettings } from "../study/defaultSettings.js";
import { fileTables } from "../study/fileTables.js";
import { nearestName } from "../study/nearestName.js";
import { quoted } from "./report/quoted.js";

type Issue = import("zod").core.$ZodIssue;

const MOST_FAULTS = 5;
const MOST_ALLOWED = 12;

/** Keys by path, `*` for any part. */
const keysByPath: readonly (readonly [string, readonly string[]])[] = [
  ["", ["name", "gaugeDay", "asOf", "settings", "files", "weather", "gauges", "stationList", "$schema"]],
  ["settings", Object.keys(defaultSettings)],
  ["weather.*", ["file", "format", "gauge", "stations"]],
  ["gauges.*", ["gauge", "latitudeDeg", "longitudeDeg", "elevationM"]],
  ["files", fileTables.map(({ kind }) => kind)],
  ["files.*.*", ["file", "delimiter", "encoding", "decimal", "dates", "twoDigitYearsFrom", "feet", "columns", "extra"]],
  ["files.*.*.feet", ["LF", "RF", "LH", "RH"]],
  ...fileTables.map(({ kind, columns }) => [`files.${kind}.*.columns`, columns.map(({ name }) => name)] as const),
  ["files.*.*.columns.*", ["header", "value", "unit", "decimal", "dates", "twoDigitYearsFrom", "words", "missing", "separator"]],
];

/** What is wrong with a `study.json`, in words. */
export interface StudyJsonFaults {
  /** At most five, each with its path, what was found and what is allowed. */
  readonly faults: readonly string[];
  readonly hint: string;
}

/** The faults that its schema found in a `study.json`, in words; the schema must report its input. @private */
export function studyJsonFaults(issues: readonly Issue[]): StudyJsonFaults {
  const flat = issues.flatMap((issue) => ofUnion(issue));
  return { faults: flat.slice(0, MOST_FAULTS).map(inWords), hint: hintFor(flat) };
}

/** Where a value may be of several kinds, the faults of the kind that it is. */
function ofUnion(issue: Issue): Issue[] {
  if (issue.code !== "invalid_union") return [issue];
  const isKind = (branch: readonly Issue[]) => !branch.some(({ code, path }) => code === "invalid_type" && path.length === 0);
  const branch = issue.errors.find(isKind);
  if (branch === undefined) return [issue];
  return branch.flatMap((each) => ofUnion({ ...each, path: [...issue.path, ...each.path] }));
}

function inWords(issue: Issue): string {
  const where = issue.path.length === 0 ? "the whole file" : issue.path.join(".");
  switch (issue.code) {
    case "unrecognized_keys": {
      const under = issue.path.length === 0 ? "" : `${where}: `;
      return `${under}the key ${issue.keys.map(quoted).join(", ")} is not known`;
    }
    case "invalid_type":
      return issue.input === undefined ? `${where} is missing` : `${where} should be of the kind ${issue.expected}`;
    case "invalid_value":
      return `${where} should be ${listed(issue.values.map(String))}${found(issue.input)}`;
    case "too_small":
      return isNumber(issue.origin)
        ? `${where} should be ${issue.inclusive === true ? "at least" : "more than"} ${String(issue.minimum)}`
        : `${where} is empty`;
    case "too_big":
      return isNumber(issue.origin)
        ? `${where} should be ${issue.inclusive === true ? "at most" : "less than"} ${String(issue.maximum)}`
        : `${where} is too long`;
    case "custom":
      return `${where}: ${issue.message}`;
    case "invalid_union":
      return `${where} should be a text, a list of texts, or an object with the keys of a column`;
    case "invalid_key":
      return `${where}: a key is empty or too long`;
    case "invalid_element":
    case "invalid_format":
    case "not_multiple_of":
      return `${where} cannot be used`;
  }
}

function isNumber(origin: string): boolean {
  return origin === "number" || origin === "int";
}

function listed(values: readonly string[]): string {
  const shown = values.slice(0, MOST_ALLOWED).join(" or ");
  return values.length > MOST_ALLOWED ? `${shown} or another of ${values.length} words` : shown;
}

function found(input: unknown): string {
  return typeof input === "string" || typeof input === "number" || typeof input === "boolean"
    ? `, not ${quoted(String(input))}`
    : "";
}

function hintFor(issues: readonly Issue[]): string {
  for (const issue of issues) {
    if (issue.code === "unrecognized_keys") {
      const known = knownKeys(issue.path.map(String));
      return `Keys here are ${known.join(", ")}.${meant(nearestName(issue.keys[0] ?? "", known))}`;
    }
  }
  const value = issues.find((issue) => issue.code === "invalid_value");
  const nearest = value?.code === "invalid_value" ? nearestName(String(value.input), value.values.map(String)) : null;
  return `Mend the value; the other settings may be left out.${meant(nearest)}`;
}

function meant(nearest: string | null): string {
  return nearest === null ? "" : ` Was ${quoted(nearest)} meant?`;
}

function knownKeys(path: readonly string[]): readonly string[] {
  const fits = (pattern: string) => {
    const parts = pattern === "" ? [] : pattern.split(".");
    return parts.length === path.length && parts.every((part, index) => part === "*" || part === path[index]);
  };
  return keysByPath.find(([pattern]) => fits(pattern))?.[1] ?? [];
}
