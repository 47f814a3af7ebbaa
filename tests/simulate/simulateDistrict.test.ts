import { readFileSync, readdirSync } from "node:fs";
import { expect, test } from "vitest";
import { readStudy } from "../../src/read/readStudy.js";
import { demoSeed } from "../../src/simulate/district/demoSeed.js";
import { simulateDistrict } from "../../src/simulate/simulateDistrict.js";

const folder = `${import.meta.dirname}/../../data-demo`;
const demo = simulateDistrict({ seed: demoSeed });

test("data-demo is what the generator makes, byte for byte (npm run demo-data)", () => {
  expect(readdirSync(folder).sort()).toEqual(demo.files.map(({ path }) => path).sort());
  for (const { path, text } of demo.files) expect(readFileSync(`${folder}/${path}`, "utf8") === text, path).toBe(true);
});

test("another seed makes another district, the same seed the same", () => {
  const visits = (seed: number) => simulateDistrict({ seed }).files.find(({ path }) => path === "visits.csv")?.text;
  expect(visits(5) === visits(5)).toBe(true);
  expect(visits(5) === visits(6)).toBe(false);
});

test("reading finds every planted fault at its line, with its code and its cost", async () => {
  const { report } = await readStudy(folder, { today: "2026-03-01" });
  const found = report.issues.map(({ file, line, code, severity }) => `${file} ${line ?? ""} ${code} ${severity}`);
  const planted = demo.faults.map(({ file, line, code, expected }) => `${file} ${line} ${code} ${expected}`);
  expect(planted.filter((fault) => !found.includes(fault))).toEqual([]);
  expect(new Set(demo.faults.map(({ kind }) => kind)).size).toBeGreaterThanOrEqual(22);
  // Beside them only what the district has by nature: small feet outside the usual range, a gauge that lay idle, slips of the tracing.
  const other = report.issues.filter(
    ({ file, line, code, severity }) => !planted.includes(`${file} ${line ?? ""} ${code} ${severity}`),
  );
  expect(new Set(other.map(({ code }) => code))).toEqual(
    new Set(["unusual_value", "accumulated_rain", "outline_crossing", "outline_missing_landmark"]),
  );
});

test("every row ends in one place", async () => {
  const { report, visits } = await readStudy(folder, { today: "2026-03-01" });
  const setAside = demo.faults.filter(({ file, expected }) => file === "visits.csv" && expected === "set_aside").length;
  const lines =
    demo.files
      .find(({ path }) => path === "visits.csv")!
      .text.trimEnd()
      .split("\n").length - 1;
  expect(report.flow.footVisits).toEqual({ read: lines, accepted: lines - setAside, setAside });
  expect(visits).toHaveLength(lines - setAside);
});

test("without faults there is nothing to find but small feet", () => {
  const clean = simulateDistrict({ seed: demoSeed, faults: false });
  expect(clean.faults).toEqual([]);
  expect(clean.files.map(({ path }) => path)).not.toContain("planted-faults.json");
  expect(clean.truth).toEqual({ ...demo.truth, outlines: { ...demo.truth.outlines, faults: [] } });
});

test("effects that are given take the place of the planted ones, and weather and horses stay", () => {
  const dry = simulateDistrict({ seed: demoSeed, effects: { rainPer10Mm14d: 0 } });
  const text = (of: typeof demo, name: string) => of.files.find(({ path }) => path === name)?.text;
  expect(dry.truth.effects).toEqual({ ...demo.truth.effects, rainPer10Mm14d: 0 });
  expect(text(dry, "weather.csv") === text(demo, "weather.csv")).toBe(true);
  expect(text(dry, "horses.csv") === text(demo, "horses.csv")).toBe(true);
  expect(text(dry, "visits.csv") === text(demo, "visits.csv")).toBe(false);
});

test("neither the language nor the time zone of the machine is asked", () => {
  const sources = ["../../src/simulate", "../../src/simulate/district"].flatMap((room) =>
    readdirSync(`${import.meta.dirname}/${room}`, { withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map(({ name }) => `${import.meta.dirname}/${room}/${name}`),
  );
  expect(sources.length).toBeGreaterThan(30);
  const asking =
    /toLocale|localeCompare|Intl\b|new Date\b|Date\.now|getTimezone|\.get(Date|Day|Hours|Month|FullYear)\(|Math\.random|process\.env/;
  expect(sources.filter((path) => asking.test(readFileSync(path, "utf8")))).toEqual([]);
});
