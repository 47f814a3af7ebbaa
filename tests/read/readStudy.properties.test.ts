import fc from "fast-check";
import { expect, test } from "vitest";
import type { FlowCount } from "../../src/study/DataReport.js";
import type { Study } from "../../src/study/Study.js";
import { StudyError } from "../../src/study/StudyError.js";
import { type Files, studyFrom } from "./folder.js";

const notes = ["", "wet", '"wet, then dry"', '"said ""fine"""', "smells"];
const row = (index: number) =>
  `2025-0${String(1 + (index % 5))}-11,H${String(index)},${["LF", "RF", "LH", "RH"][index % 4] ?? ""},${String(index % 4)},${notes[index % notes.length] ?? ""}`;
const header = "visit_date,horse_id,foot,thrush_grade,note";
const linesOf = (text: string) => text.split(/\r\n|\r|\n/);

/** The study, or the error it was refused with; anything else that is thrown fails the test. */
async function outcome(files: Files): Promise<Study | StudyError> {
  try {
    return await studyFrom(files);
  } catch (error) {
    if (error instanceof StudyError) return error;
    throw error;
  }
}

function addsUp({ report, visits }: Study): void {
  for (const { rowsRead, accepted, setAside } of report.inputs) expect(accepted + setAside).toBe(rowsRead);
  for (const { read, accepted, setAside } of Object.values<FlowCount>({ ...report.flow })) {
    expect(accepted + setAside).toBe(read);
    expect(Math.min(accepted, setAside)).toBeGreaterThanOrEqual(0);
  }
  expect(report.flow.footVisits.accepted).toBe(visits.length);
  const whole = report.counts.filter(({ file, severity }) => file === "visits.csv" && severity === "set_aside");
  const faulty = whole.reduce((sum, { count }) => sum + count, 0);
  expect(faulty).toBeGreaterThanOrEqual(report.flow.footVisits.setAside);
}

const nasty = fc.constantFrom('"', '""', ",", ",,", '",', ',"', '\\"', "'", ";", "\0", "\t", " ", "\u00e9", "\u2028", "NA", "-");
const spoilt = fc.array(fc.tuple(fc.nat({ max: 39 }), fc.nat(), nasty), { minLength: 1, maxLength: 12 });

test("whatever is typed into some rows, every other row is kept, on its own line", async () => {
  await fc.assert(
    fc.asyncProperty(spoilt, fc.constantFrom("\n", "\r\n", "\r"), async (edits, end) => {
      const rows = Array.from({ length: 40 }, (_, index) => row(index));
      for (const [index, at, mark] of edits) {
        const text = rows[index] ?? "";
        const cut = at % (text.length + 1);
        rows[index] = text.slice(0, cut) + mark + text.slice(cut);
      }
      const study = await studyFrom({ "visits.csv": [header, ...rows].join(end) });
      const touched = new Set(edits.map(([index]) => index));
      const untouched = rows.flatMap((_, index) => (touched.has(index) ? [] : [index + 2]));
      const kept = new Map(study.visits.map(({ line, horseId }) => [line, horseId]));
      expect(untouched.filter((line) => kept.get(line) !== `H${String(line - 2)}`)).toEqual([]);
      addsUp(study);
    }),
    { numRuns: 250 },
  );
});

const bytes = fc.constantFrom(
  "\n",
  "\r",
  "\r\n",
  '"',
  ",",
  "\0",
  "\u00ff",
  "\u00c3",
  "\ufeff",
  "x",
  "0",
  "\n\n",
  '"\n',
  '\n"',
  "2025-01-11,H1,LF,1,\n",
);
const mutation = fc.tuple(fc.nat(), fc.nat({ max: 6 }), bytes);

function mutated(text: string, edits: readonly (readonly [number, number, string])[]): Buffer {
  let latin1 = Buffer.from(text).toString("latin1");
  for (const [at, cut, insert] of edits) {
    const place = at % (latin1.length + 1);
    latin1 = latin1.slice(0, place) + insert + latin1.slice(place + cut);
  }
  return Buffer.from(latin1, "latin1");
}

const base = {
  "visits.csv": `${[header, ...Array.from({ length: 25 }, (_, index) => row(index)), '2025-01-01,H1,LF,1,"two\nlines"', "2025-01-01,H1,RF,1,"].join("\n")}\n`,
  "horses.csv": `horse_id,yard_id,species\n${Array.from({ length: 25 }, (_, index) => `H${String(index)},Y${String(index % 3)},horse`).join("\n")}\n`,
  "yards.csv": "yard_id,gauge_id\nY0,G\nY1,G\nY2,G\n",
  "weather.csv": "gauge_id,date,rain_mm,flag\nG,2025-01-01,3,\nG,2025-01-02,,trace\n",
  "rain.csv": "XX1,20250301,PRCP,25,,,E,\nXX1,20250302,MDPR,110,,,E,\nXX1,20250302,DAPR,3,,,E,0900\n",
  "study.json": '{"name":"T","gaugeDay":"calendar_day","weather":[{"file":"rain.csv","format":"ghcn-by-station"}]}',
} as const;

test("whatever is done to the bytes of any file: no error but a StudyError, sums that add up, true lines, the same answer twice", async () => {
  const names = Object.keys(base) as (keyof typeof base)[];
  const edit = fc.record({
    name: fc.constantFrom(...names, "visits.csv" as const),
    edits: fc.array(mutation, { minLength: 1, maxLength: 6 }),
  });
  await fc.assert(
    fc.asyncProperty(fc.array(edit, { minLength: 1, maxLength: 3 }), async (changes) => {
      const files: Record<string, string | Buffer> = { ...base };
      for (const { name, edits } of changes) files[name] = mutated(base[name], edits);
      const first = await outcome(files);
      const second = await outcome(files);
      if (first instanceof StudyError || second instanceof StudyError) {
        expect([first instanceof StudyError, second instanceof StudyError]).toEqual([true, true]);
        expect(first).toMatchObject({ message: (second as StudyError).message });
        expect((first as StudyError).hint).not.toBe("");
        return;
      }
      expect(second).toEqual(first);
      addsUp(first);
      const lines = linesOf(
        Buffer.from(files["visits.csv"] ?? "")
          .toString("utf8")
          .replace(/^\ufeff/, ""),
      );
      for (const { line, visitDate } of first.visits) expect(lines[line - 1]).toContain(visitDate);
      for (const { line, file, value, column } of first.report.issues) {
        if (file === "visits.csv" && line !== null && column === "foot" && value !== null)
          expect(lines[line - 1]).toContain(value.split(/["\n]/)[0]);
      }
    }),
    { numRuns: 250 },
  );
});
