import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readStudy } from "../../src/read/readStudy.js";

interface PlantedFault {
  readonly file: string;
  readonly line: number;
  readonly code: string;
  readonly expected: string;
}

// The demo is written by the simulation, which notes beside it every fault it put in.
const planted = JSON.parse(readFileSync("data-demo/planted-faults.json", "utf8")) as readonly PlantedFault[];

test("every fault planted in the demo is found on its line, and no row or cell is lost but for those", async () => {
  const { report } = await readStudy("data-demo");
  const place = (file: string, line: number | null, code: string, cost: string) => `${file}:${String(line)} ${code} ${cost}`;
  const found = report.issues.map(({ file, line, code, severity }) => place(file, line, code, severity));
  const expected = planted.map(({ file, line, code, expected }) => place(file, line, code, expected));
  expect(planted.length).toBeGreaterThan(20);
  expect(expected.filter((fault) => !found.includes(fault))).toEqual([]);
  const lost = report.issues
    .filter(({ severity }) => severity !== "warning")
    .map(({ file, line, code, severity }) => place(file, line, code, severity));
  // A several-day total that says so is no fault, but its millimetres are used for no day, which the report must say.
  expect(lost.filter((fault) => !expected.includes(fault) && !fault.includes("accumulated_rain"))).toEqual([]);
});
