import { deepStrictEqual, ok } from "node:assert/strict";
import fc from "fast-check";
import iconv from "iconv-lite";
import { readStudy } from "../../src/read/readStudy.js";
import type { SetAsideFile, SetAsideRow } from "../../src/read/SetAsideRow.js";
import type { FlowCount } from "../../src/study/DataReport.js";
import type { Study } from "../../src/study/Study.js";
import { StudyError } from "../../src/study/StudyError.js";
import { type Files, inFolder } from "./folder.js";

/** What a run of mutations met. */
export interface MutationRun {
  readonly studies: number;
  readonly mutatedFiles: number;
  /** Studies that were refused as a whole, by code. */
  readonly refused: Readonly<Record<string, number>>;
  readonly rowsRead: number;
  readonly rowsSetAside: number;
}

const FEET = ["LF", "RF", "LH", "RH"];
const two = (number: number) => String(number).padStart(2, "0");
const lines = (count: number, row: (index: number) => string) => Array.from({ length: count }, (_, index) => row(index));
const mapped = (visits: object, more: object = {}) =>
  JSON.stringify({ name: "T", gaugeDay: "ends_on_date", files: { visits: [visits], ...more } });

const horses = ["horse_id,yard_id,species", ...lines(9, (index) => `H${String(index)},Y${String(index % 3)},horse`)].join("\n");

/** Studies of every make, before anything is done to them. */
const bases: readonly Files[] = [
  {
    "study.json": '{"name":"T","gaugeDay":"calendar_day","weather":[{"file":"rain.csv","format":"ghcn-by-station"}]}',
    "visits.csv": [
      "visit_date,horse_id,foot,stage,thrush_grade,note",
      ...lines(
        24,
        (index) =>
          `2025-01-${two(1 + (index >> 2))},H${String(index % 9)},${FEET[index % 4] ?? ""},single,${String(index % 4)},${["", '"a, b"', "x"][index % 3] ?? ""}`,
      ),
      '2025-02-01,H1,LF,,1,"two',
      'lines"',
    ].join("\n"),
    "horses.csv": horses,
    "yards.csv": "yard_id,gauge_id\nY0,G\nY1,G\nY2,G\n",
    "weather.csv": "gauge_id,date,rain_mm,flag\nG,2025-01-01,3,\nG,2025-01-02,,trace\n",
    "rain.csv": "XX1,20250301,PRCP,25,,,E,\nXX1,20250302,MDPR,110,,,E,\nXX1,20250302,DAPR,3,,,E,0900\n",
    "outlines.csv": "horse_id,visit_date,foot,ring,point,x_mm,y_mm\nH1,2025-01-01,LF,wall,1,0,0\nH1,2025-01-01,LF,wall,2,3,0\n",
    "changes.csv": "yard_id,changed_on,what\nY1,2025-01-02,rubber mats\n",
  },
  {
    "study.json": mapped({
      ...{
        file: "buch.csv",
        delimiter: ";",
        encoding: "windows-1252",
        decimal: ",",
        dates: "day-month-year",
        twoDigitYearsFrom: 2000,
      },
      columns: {
        ...{ visit_date: "Datum", horse_id: "Pferd", foot: "Huf" },
        thrush_grade: { header: "Strahl", words: { "-": 0, "+": 1 }, missing: ["nb"] },
        hoof_width_mm: { header: "Breite", unit: "cm" },
      },
      extra: ["Wetter"],
    }),
    "buch.csv": iconv.encode(
      [
        "Datum;Pferd;Huf;Strahl;Breite;Wetter",
        ...lines(
          16,
          (index) =>
            `${String(1 + (index >> 2))}.3.25;R\u00fcbe${String(index % 5)};${FEET[index % 4] ?? ""};${["-", "+", "nb", "2"][index % 4] ?? ""};1${String(index % 3)},5;na\u00df`,
        ),
      ].join("\r\n"),
      "windows-1252",
    ),
  },
  {
    "study.json": mapped({
      ...{ file: "wide.txt", delimiter: "tab", feet: { LF: "NF", RF: "OF", LH: "NH", RH: "OH" } },
      columns: {
        visit_date: "Date",
        horse_id: "Horse",
        thrush_grade: "{foot} thrush",
        toe_length_mm: { header: "{foot} toe", unit: "in" },
      },
    }),
    "horses.csv": horses,
    "wide.txt": [
      ["Date", "Horse", ...["NF", "OF", "NH", "OH"].flatMap((foot) => [`${foot} thrush`, `${foot} toe`])].join("\t"),
      ...lines(8, (index) =>
        [
          `2025-01-${two(index + 1)}`,
          `H${String(index)}`,
          ...lines(4, (foot) => `${String(foot % 3)}\t3 1/${String(foot + 2)}`),
        ].join("\t"),
      ),
    ].join("\n"),
  },
  {
    "study.json": mapped({
      file: ["a.csv", "b.csv"],
      delimiter: "|",
      dates: "month-day-year",
      columns: { horse_id: "Name", observer_id: { value: "A" } },
    }),
    "a.csv": Buffer.from(
      `\uFEFFvisit_date|Name|foot|note\r\n${lines(6, (index) => `1/${String(index + 1)}/2025|Ash|${FEET[index % 4] ?? ""}|"x|y"`).join("\r\n")}`,
      "utf16le",
    ),
    "b.csv": `visit_date|Name|foot|note\n${lines(6, (index) => `2/${String(index + 1)}/2025|Ash|${FEET[index % 4] ?? ""}|`).join("\n")}\n`,
  },
];

const pieces = [
  "\n",
  "\r",
  "\r\n",
  '"',
  '""',
  ",",
  ";",
  "\t",
  "|",
  "\0",
  "\u00ff",
  "\u0081",
  "\u00c3",
  "\u00ef\u00bb\u00bf",
  "\u00ff\u00fe",
  "x",
  "0",
  "-",
  "=1+1",
  "\n\n",
  '"\n',
  '\n"',
  "null",
  "{",
  "}",
  "[",
  "\u00e2\u0080\u00a8",
  "99999999",
  "1e309",
  " ",
];
const edit = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({
      kind: fc.constant("splice" as const),
      at: fc.nat(),
      cut: fc.nat({ max: 8 }),
      insert: fc.constantFrom(...pieces),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constantFrom(
        "truncate" as const,
        "repeat line" as const,
        "drop line" as const,
        "swap lines" as const,
        "double" as const,
      ),
      at: fc.nat(),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant("bytes" as const),
      at: fc.nat(),
      bytes: fc.uint8Array({ minLength: 1, maxLength: 12 }),
    }),
  },
);
type Edit = typeof edit extends fc.Arbitrary<infer Value> ? Value : never;

/** Three edits of four spare the header, without which a file is refused as a whole. */
function edited(content: string | Uint8Array, edits: readonly Edit[]): Buffer {
  const latin1 = Buffer.from(content).toString("latin1");
  const end = latin1.indexOf("\n") + 1;
  const whole = edits.reduce((sum, { at }) => sum + at, 0) % 4 === 0;
  return Buffer.from(whole ? spoilt(latin1, edits) : latin1.slice(0, end) + spoilt(latin1.slice(end), edits), "latin1");
}

function spoilt(before: string, edits: readonly Edit[]): string {
  let text = before;
  for (const each of edits) {
    const at = each.at % (text.length + 1);
    const rows = text.split("\n");
    const line = each.at % rows.length;
    if (each.kind === "splice") text = text.slice(0, at) + each.insert + text.slice(at + each.cut);
    else if (each.kind === "bytes") text = text.slice(0, at) + Buffer.from(each.bytes).toString("latin1") + text.slice(at);
    else if (each.kind === "truncate") text = text.slice(0, at);
    else if (each.kind === "double") text += text.slice(at);
    else if (each.kind === "swap lines") text = [...rows.slice(line), ...rows.slice(0, line)].join("\n");
    else text = rows.flatMap((row, index) => (index !== line ? [row] : each.kind === "drop line" ? [] : [row, row])).join("\n");
  }
  return text;
}

interface Outcome {
  readonly study: Study | StudyError;
  readonly setAside: readonly (readonly [SetAsideFile, SetAsideRow])[];
}

async function outcome(files: Files): Promise<Outcome> {
  const setAside: [SetAsideFile, SetAsideRow][] = [];
  return inFolder(files, async (folder) => {
    try {
      const study = await readStudy(folder, { today: "2025-06-30", setAside: (...each) => setAside.push(each) });
      return { study, setAside };
    } catch (error) {
      if (!(error instanceof StudyError)) throw error;
      return { study: error, setAside };
    }
  });
}

function linesOf(content: string | Uint8Array, { encoding }: SetAsideFile): string[] {
  const text = encoding === "utf-16" ? utf16(Buffer.from(content)) : iconv.decode(Buffer.from(content), encoding);
  return text.split(/\r\n|\r|\n/);
}

function utf16(content: Buffer): string {
  const even = content.subarray(0, content.length - (content.length % 2));
  return iconv.decode(even, even[0] === 0xfe ? "utf-16be" : "utf-16le");
}

function holds(files: Files, { study, setAside }: Outcome): void {
  if (study instanceof StudyError) {
    ok(study.message.length > 10 && study.hint.length > 5 && /^[a-z_0-9]+$/.test(study.code));
    return;
  }
  const { report, visits } = study;
  for (const { rowsRead, accepted, setAside: aside } of report.inputs) deepStrictEqual(accepted + aside, rowsRead);
  for (const { read, accepted, setAside: aside } of Object.values<FlowCount>({ ...report.flow })) {
    deepStrictEqual(accepted + aside, read);
    ok(accepted >= 0 && aside >= 0);
  }
  deepStrictEqual(report.flow.footVisits.accepted, visits.length);
  const lineCount = new Map(
    Object.entries(files).map(([name, content]) => [
      name,
      Buffer.from(content)
        .toString("latin1")
        .split(/\r\n|\r|\n/).length,
    ]),
  );
  for (const { file, line } of [...visits, ...report.issues])
    if (line !== null) ok(line >= 1 && line <= (lineCount.get(file) ?? 0));
  for (const [file, row] of setAside) {
    ok(row.reasons.length > 0);
    if (row.bytes !== null) continue;
    const [first = ""] = row.text.split(/\r\n|\r|\n/);
    const stands = linesOf(files[file.file] ?? "", file)[row.line - 1] ?? "";
    // Broken UTF-16 is shown with other marks in its place.
    if (!/[\ufffd\ud800-\udfff]/.test(stands + first))
      deepStrictEqual(first.replace(/^\ufeff/, ""), stands.replace(/^\ufeff/, ""));
  }
  for (const { file, setAside: aside, layout } of report.inputs) {
    const own = setAside.filter(([from]) => from.file === file);
    if (layout?.recordsARow === 1) deepStrictEqual(own.length, aside);
  }
}

/**
 * Changes files of whole studies at random, reads each study, one in three twice, and throws when one of these does not hold: no error but a `StudyError` with words; rows read are
 * rows accepted and set aside, at every level; lines are in the file, and a row set aside is the text on its line; the second reading gives what the first gave.
 */
export async function mutations(runs: number, seed: number): Promise<MutationRun> {
  const met = { studies: 0, mutatedFiles: 0, rowsRead: 0, rowsSetAside: 0 };
  const refused: Record<string, number> = {};
  const change = fc.record({ file: fc.nat(), edits: fc.array(edit, { minLength: 1, maxLength: 5 }) });
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom(...bases, ...bases.slice(0, 1)),
      fc.array(change, { minLength: 3, maxLength: 12 }),
      async (base, changes) => {
        const files: Record<string, string | Uint8Array> = { ...base };
        const data = Object.keys(base).filter((name) => name !== "study.json");
        const touched = new Set<string>();
        for (const { file, edits } of changes) {
          // Now and then study.json too: most of what is done to it ends the study.
          const name = file % 17 === 0 ? "study.json" : (data[file % data.length] ?? "");
          files[name] = edited(files[name] ?? "", edits);
          touched.add(name);
        }
        const first = await outcome(files);
        holds(files, first);
        // One study in three is read again.
        if (met.studies % 3 === 0) deepStrictEqual(await outcome(files), first);
        met.studies += 1;
        met.mutatedFiles += touched.size;
        if (first.study instanceof StudyError) refused[first.study.code] = (refused[first.study.code] ?? 0) + 1;
        else {
          const { read, setAside } = first.study.report.flow.footVisits;
          met.rowsRead += read;
          met.rowsSetAside += setAside;
        }
      },
    ),
    { numRuns: runs, seed },
  );
  return { ...met, refused };
}
