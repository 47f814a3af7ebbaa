import { isUtf8 } from "node:buffer";
import { readFile, stat } from "node:fs/promises";
import { defaultSettings } from "../study/defaultSettings.js";
import { jsonFault } from "./jsonFault.js";
import { nearestName } from "./report/nearestName.js";
import { quoted } from "./report/quoted.js";
import { refusals } from "./report/refusals.js";
import type { StudyJson } from "./StudyJson.js";
import { studyJsonSchema } from "./studyJsonSchema.js";
import { refuseOtherFormats } from "./text/refuseOtherFormats.js";
import { studyPath } from "./text/studyPath.js";
import { systemCode } from "./text/systemCode.js";
import type { Zod } from "./Zod.js";

const FILE = "study.json";
const LARGEST_BYTES = 1_000_000;
const MOST_FAULTS = 5;

const knownKeys: Readonly<Record<string, readonly string[]>> = {
  "": ["name", "gaugeDay", "asOf", "settings", "weather", "gauges", "stationList"],
  settings: Object.keys(defaultSettings),
  weather: ["file", "format", "gauge", "stations"],
  gauges: ["gauge", "latitudeDeg", "longitudeDeg", "elevationM"],
};

/**
 * Reads and checks `study.json`.
 *
 * @throws StudyError `file_missing`, `not_a_file`, `file_unreadable`, `not_csv_text`, `bad_json` with line and column, `bad_study_json` with up
 * to five faults: keys that are not known, values that are not allowed.
 *
 * @private
 */
export async function readStudyJson(zod: Zod, folder: string): Promise<StudyJson> {
  const path = (await studyPath(folder, FILE, true)) ?? "";
  if ((await stat(path)).size > LARGEST_BYTES)
    throw refusals.badStudy(["the file is larger than a million bytes"], "It holds settings only, no data.");
  const bytes = await readFile(path).catch((error: unknown) => {
    throw refusals.unreadable(FILE, systemCode(error));
  });
  refuseOtherFormats(bytes, FILE);
  if (!isUtf8(bytes)) throw refusals.notText(FILE, "text with bytes of another encoding", "Save it again as UTF-8.");
  return checked(zod, parsedJson(bytes.toString("utf8").replace(/^\uFEFF/, "")));
}

function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    const fault = jsonFault(text);
    throw refusals.badJson(fault?.line ?? 1, fault?.column ?? 1, fault?.found ?? "some place");
  }
}

function checked(zod: Zod, json: unknown): StudyJson {
  const result = studyJsonSchema(zod).safeParse(json);
  if (!result.success) {
    const { issues } = result.error;
    throw refusals.badStudy(issues.slice(0, MOST_FAULTS).map(inWords), hintFor(issues));
  }
  const { data } = result;
  for (const key of ["gaugeDay", "asOf"] as const) {
    const [above, inSettings] = [data[key] ?? undefined, data.settings?.[key] ?? undefined];
    if (above !== undefined && inSettings !== undefined && above !== inSettings) {
      throw refusals.badStudy(
        [`${key} is ${quoted(above)} and settings.${key} is ${quoted(inSettings)}`],
        "Keep one of the two.",
      );
    }
  }
  return data;
}

type ZodIssue = import("zod").core.$ZodIssue;

function inWords(issue: ZodIssue): string {
  const where = issue.path.length === 0 ? "the whole file" : issue.path.join(".");
  switch (issue.code) {
    case "unrecognized_keys": {
      const under = issue.path.length === 0 ? "" : `${issue.path.join(".")}: `;
      return `${under}the key ${issue.keys.map(quoted).join(", ")} is not known`;
    }
    case "invalid_type":
      return issue.input === undefined && issue.message.endsWith("undefined")
        ? `${where} is missing`
        : `${where} should be of the kind ${issue.expected}`;
    case "invalid_value":
      return `${where} should be ${issue.values.map(String).join(" or ")}`;
    case "too_small":
      return issue.origin === "number" || issue.origin === "int"
        ? `${where} should be ${issue.inclusive === true ? "at least" : "more than"} ${String(issue.minimum)}`
        : `${where} is empty`;
    case "too_big":
      return issue.origin === "number" || issue.origin === "int"
        ? `${where} should be ${issue.inclusive === true ? "at most" : "less than"} ${String(issue.maximum)}`
        : `${where} is too long`;
    case "custom":
      return `${where}: ${issue.message}`;
    case "invalid_element":
    case "invalid_format":
    case "invalid_key":
    case "invalid_union":
    case "not_multiple_of":
      return `${where} cannot be used`;
  }
}

function hintFor(issues: readonly ZodIssue[]): string {
  const unknown = issues.find(({ code }) => code === "unrecognized_keys");
  if (unknown?.code !== "unrecognized_keys") return "Mend the value; the other settings may be left out.";
  const known = knownKeys[String(unknown.path[0] ?? "")] ?? [];
  const nearest = nearestName(unknown.keys[0] ?? "", known);
  return `Keys here are ${known.join(", ")}.${nearest === null ? "" : ` Was ${quoted(nearest)} meant?`}`;
}
