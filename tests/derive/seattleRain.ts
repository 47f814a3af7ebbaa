import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname } from "node:path";
import type { GaugeDay } from "../../src/study/GaugeDay.js";
import { gaugeDay } from "../study.js";

const SHA256 = "0845078a290b48e3149ab8639966824110a251db4e06fc144c06ebb534af23be";

/**
 * Daily rain of Seattle 2012-2015, 1,461 days without a gap: seattle-weather.csv of the npm package vega-datasets 3.2.1 (BSD-3-Clause),
 * made from NOAA records.
 */
export function seattleRain(): GaugeDay[] {
  const main = createRequire(import.meta.url).resolve("vega-datasets");
  const bytes = readFileSync(`${dirname(dirname(main))}/data/seattle-weather.csv`);
  const found = createHash("sha256").update(bytes).digest("hex");
  if (found !== SHA256) throw new Error(`seattle-weather.csv is another file: ${found}`);
  const [head, ...lines] = bytes.toString("utf8").trim().split("\n");
  if (!head?.startsWith("date,precipitation,")) throw new Error("seattle-weather.csv has other columns");
  return lines.map((line) => {
    const [date = "", rain = ""] = line.split(",");
    return gaugeDay({ gaugeId: "Seattle", date, rainMm: Number(rain) });
  });
}
