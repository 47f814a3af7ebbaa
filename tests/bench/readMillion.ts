import { execFile } from "node:child_process";
import { createWriteStream, mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { once } from "node:events";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { finished } from "node:stream/promises";
import { promisify } from "node:util";

/** What a benchmark found. */
export interface Benchmark {
  readonly name: string;
  readonly seconds: number;
  /** Processor time of the whole process, all threads: what `seconds` would be near on a machine with nothing else to do. */
  readonly cpuSeconds: number;
  readonly rows: number;
  /** Largest resident memory of the process, in millions of bytes. */
  readonly peakMb: number;
}

const ROWS = 1_000_000;
const FEET = ["LF", "RF", "LH", "RH"];
const COLUMNS =
  "visit_date,horse_id,foot,stage,reason,observer_id,examined,thrush_grade,thrush_site,cleft_depth_mm,hoof_width_mm,hoof_length_mm,toe_length_mm,heel_height_mm,toe_angle_deg,heel_angle_deg,bars,white_line,shoe_state,note";

/**
 * Reads and checks one study of a million foot rows with twenty columns in a process of its own, and prints the result as one line of JSON. The
 * rows are made from a fixed sequence; `mapped` writes them as another make, with semicolons, decimal commas, days first, centimetres and code words; one row in twenty-five has a quoted note. The time is that of `readStudy`, without starting the process.
 */
export async function readMillion(rows = ROWS, mapped = false): Promise<Benchmark> {
  const folder = mkdtempSync(join(tmpdir(), "underfoot-bench-"));
  try {
    const files = mapped ? { files: { visits: [MAPPING] } } : {};
    writeFileSync(join(folder, "study.json"), JSON.stringify({ name: "A million rows", gaugeDay: "ends_on_date", ...files }));
    await writeVisits(join(folder, "visits.csv"), rows, mapped);
    const child = join(import.meta.dirname, "readMillionChild.ts");
    const { stdout } = await promisify(execFile)(process.execPath, ["--import", "tsx", child, folder]);
    const { seconds, cpuSeconds, peakMb, read } = JSON.parse(stdout) as {
      seconds: number;
      cpuSeconds: number;
      peakMb: number;
      read: number;
    };
    if (read !== rows) throw new Error(`${read} of ${rows} rows were accepted`);
    const megabytes = Math.round(statSync(join(folder, "visits.csv")).size / 1e6);
    const name = `read ${rows} foot rows${mapped ? " by a mapping" : ""} (${megabytes} MB)`;
    const result = { name, seconds, cpuSeconds, rows, peakMb };
    return result;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const MAPPING = {
  file: "visits.csv",
  ...{ delimiter: ";", decimal: ",", dates: "day-month-year" },
  columns: {
    hoof_width_mm: { unit: "cm" },
    hoof_length_mm: { unit: "cm" },
    thrush_grade: { words: { none: 0, "+": 1, "++": 2, "+++": 3 } },
    foot: { words: { VL: "LF", VR: "RF", HL: "LH", HR: "RH" } },
  },
};
const ELSEWHERE = { feet: ["VL", "VR", "HL", "HR"], grades: ["none", "+", "++", "+++"], centimetres: new Set([10, 11]) };

/** A row as another make of file has it. */
function elsewhere(cells: readonly (string | number | undefined)[]): string {
  const [year, month, day] = String(cells[0]).split("-");
  return cells
    .map((cell, index) => {
      if (index === 0) return `${day ?? ""}.${month ?? ""}.${year ?? ""}`;
      if (index === 2) return ELSEWHERE.feet[FEET.indexOf(String(cell))];
      if (index === 7) return ELSEWHERE.grades[Number(cell)];
      if (index < 9 || index > 15) return cell;
      const number = ELSEWHERE.centimetres.has(index) ? (Number(cell) / 10).toFixed(2) : String(cell);
      return number.replace(".", ",");
    })
    .join(";");
}

async function writeVisits(path: string, rows: number, mapped: boolean): Promise<void> {
  const out = createWriteStream(path);
  out.write(`${mapped ? COLUMNS.replaceAll(",", ";") : COLUMNS}\n`);
  let state = 1;
  const upTo = (most: number) => {
    state = (state * 48_271) % 2_147_483_647;
    return (state / 2_147_483_647) * most;
  };
  const between = (low: number, high: number) => (low + upTo(high - low)).toFixed(1);
  let text = "";
  for (let index = 0; index < rows; index++) {
    const visit = index >> 2;
    const horse = visit % 20_000;
    const day = 18_262 + Math.floor(visit / 20_000) * 42 + (horse % 40);
    const grade = Math.floor(upTo(4));
    const cells = [
      new Date(day * 86_400_000).toISOString().slice(0, 10),
      `h${horse}`,
      FEET[index & 3],
      "single",
      "routine",
      `o${horse % 7}`,
      "yes",
      grade,
      grade === 0 ? "" : "central_sulcus",
      between(0, 20),
      between(110, 150),
      between(110, 150),
      between(70, 90),
      between(25, 45),
      between(45, 55),
      between(40, 50),
      "level",
      "tight",
      "bare",
      index % 25 === 0 ? '"wet, soft"' : "",
    ];
    text += `${mapped ? elsewhere(cells) : cells.join(",")}\n`;
    if (text.length < 1e6) continue;
    if (!out.write(text)) await once(out, "drain");
    text = "";
  }
  out.end(text);
  await finished(out);
}
