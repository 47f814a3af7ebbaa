import { isUtf8 } from "node:buffer";
import { readFile, stat } from "node:fs/promises";
import { createHash } from "node:crypto";
import type { InputFile } from "../study/DataReport.js";
import { jsonFault } from "./jsonFault.js";
import { unanswered } from "./mapping/unanswered.js";
import { quoted } from "./report/quoted.js";
import { refusals } from "./report/refusals.js";
import type { StudyJson } from "./StudyJson.js";
import { studyJsonFaults } from "./studyJsonFaults.js";
import { studyJsonSchema } from "./studyJsonSchema.js";
import { refuseOtherFormats } from "./text/refuseOtherFormats.js";
import { studyPath } from "./text/studyPath.js";
import { systemCode } from "./text/systemCode.js";
import type { Zod } from "./Zod.js";

const FILE = "study.json";
const LARGEST_BYTES = 1_000_000;
/**
 * Reads and checks `study.json`.
 *
 * @throws StudyError `file_missing`, `not_a_file`, `file_unreadable`, `not_csv_text`, `bad_json` with line and column, `bad_study_json` with up
 * to five faults: keys that are not known, values that are not allowed; `unanswered` when null still stands for an answer under `files`.
 *
 * @private
 */
export async function readStudyJson(zod: Zod, folder: string): Promise<{ readonly json: StudyJson; readonly input: InputFile }> {
  const path = (await studyPath(folder, FILE, true)) ?? "";
  if ((await stat(path)).size > LARGEST_BYTES)
    throw refusals.badStudy(["the file is larger than a million bytes"], "It holds settings only, no data.");
  const bytes = await readFile(path).catch((error: unknown) => {
    throw refusals.unreadable(FILE, systemCode(error));
  });
  refuseOtherFormats(bytes, FILE);
  if (!isUtf8(bytes)) throw refusals.notText(FILE, "text with bytes of another encoding", "Save it again as UTF-8.");
  const json = checked(zod, parsedJson(bytes.toString("utf8").replace(/^\uFEFF/, "")));
  const sha256 = createHash("sha256").update(bytes).digest("hex");
  return { json, input: { file: FILE, kind: "study", bytes: bytes.length, sha256, rowsRead: 0, accepted: 0, setAside: 0 } };
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
  // Used once: compiling the schema would cost more than it saves.
  const result = studyJsonSchema(zod, keysOf(json, new Set())).safeParse(json, { reportInput: true, jitless: true });
  if (!result.success) {
    const { faults, hint } = studyJsonFaults(result.error.issues);
    throw refusals.badStudy(faults, hint);
  }
  const { data } = result;
  const open = unanswered(data.files ?? {});
  if (open.length > 0) throw refusals.unanswered(open);
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

const DEEPEST = 12;

/** The keys of the objects in a JSON value, as deep as any that a study.json may hold. */
function keysOf(json: unknown, keys: Set<string>, depth = 0): Set<string> {
  if (typeof json !== "object" || json === null || depth > DEEPEST) return keys;
  for (const [key, value] of Object.entries(json)) {
    if (!Array.isArray(json)) keys.add(key);
    keysOf(value, keys, depth + 1);
  }
  return keys;
}
