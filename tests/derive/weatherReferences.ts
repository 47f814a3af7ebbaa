import { readFileSync } from "node:fs";
import type { GaugeDay } from "../../src/study/GaugeDay.js";
import { gaugeDay } from "../study.js";

const folder = "tests/reference/weather";
const rows = (file: string) =>
  readFileSync(`${folder}/${file}`, "utf8")
    .trim()
    .split("\n")
    .slice(1)
    .map((line) => line.split(","));

/** The invented five-year record of tests/reference/weather/rain.csv. */
export function referenceRain(): GaugeDay[] {
  const cell = (text: string | undefined) => (text === undefined || text === "" ? null : Number(text));
  return rows("rain.csv").map(([date = "", rain, low, high]) =>
    gaugeDay({ gaugeId: "R", date, rainMm: cell(rain), tempMinC: cell(low), tempMaxC: cell(high) }),
  );
}

/** What R made of it: value by key, for one kind of result. */
export function weatherReferences(what: string): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  for (const [kind, key = "", value] of rows("references.csv")) if (kind === what) found.set(key, Number(value));
  if (found.size === 0) throw new Error(`references.csv holds no ${what}`);
  return found;
}
