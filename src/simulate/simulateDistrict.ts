import { changeColumns } from "../study/changeColumns.js";
import type { Column } from "../study/Column.js";
import { horseColumns } from "../study/horseColumns.js";
import { outlineColumns } from "../study/outlineColumns.js";
import { visitColumns } from "../study/visitColumns.js";
import { weatherColumns } from "../study/weatherColumns.js";
import { yardColumns } from "../study/yardColumns.js";
import { normalQuantile } from "../estimate/numeric/normalQuantile.js";
import { seededRandom } from "../estimate/numeric/seededRandom.js";
import { csvText } from "./district/csvText.js";
import { districtCalendar } from "./district/districtCalendar.js";
import { districtHerd } from "./district/districtHerd.js";
import { districtOutlines } from "./district/districtOutlines.js";
import { districtReadme } from "./district/districtReadme.js";
import { type DistrictTruth, districtTruth } from "./district/districtTruth.js";
import { districtWeather } from "./district/districtWeather.js";
import type { DistrictWorld } from "./district/DistrictWorld.js";
import { districtYards } from "./district/districtYards.js";
import { horseHistory } from "./district/horseHistory.js";
import { horseLines } from "./district/horseLines.js";
import { type PlantedEffects, plantedEffects } from "./district/plantedEffects.js";
import { type PlantedFault, plantedFaults } from "./district/plantedFaults.js";
import { plantFaults } from "./district/plantFaults.js";
import { plantOutlineSlips } from "./district/plantOutlineSlips.js";
import { rounded } from "./district/rounded.js";
import { specimenRows } from "./district/specimenRows.js";
import type { TextLine } from "./district/TextLine.js";
import { visitLines } from "./district/visitLines.js";
import { weatherLines } from "./district/weatherLines.js";
import { wetnessBefore } from "./district/wetnessBefore.js";
import { yardLines } from "./district/yardLines.js";

/** Choices of a simulated district. */
export interface SimulateDistrictOptions {
  readonly seed: string | number;
  /** Effects other than those of the demo data, such as no effect of rain. */
  readonly effects?: Partial<PlantedEffects>;
  /** Without the faults and without `planted-faults.json` when false. */
  readonly faults?: boolean;
}

/** A study folder as texts, and what it was made with. */
export interface SimulatedDistrict {
  readonly files: readonly { readonly path: string; readonly text: string }[];
  readonly truth: DistrictTruth;
  readonly faults: readonly PlantedFault[];
}

/**
 * An invented district of six yards over fourteen months, whose truth is known: a whole study folder as texts, with faults planted in it
 * to be found. The same seed gives the same bytes on any machine.
 *
 * Method: daily weather of two gauges; feet in horses in yards on a log-odds scale (`plantedEffects`), graded by proportional odds; visits
 * that follow on agreed intervals, with yards that run late; growth, trims, flares, cracks, abscess tracks and rings; outlines traced of
 * some feet. The yard effects are normal
 * quantiles in the order of their ground, so that six yards have the spread they should.
 *
 * Missing: feet that were not looked at, measures not taken, gauge days without a reading, all left empty.
 *
 * Source: own; no value stands for a real herd.
 */
export function simulateDistrict({ seed, effects = {}, faults = true }: SimulateDistrictOptions): SimulatedDistrict {
  const random = seededRandom(seed);
  const planted = { ...plantedEffects, ...effects };
  const weather = districtWeather(random.stream("weather"));
  const yardEffects = spreadOver(planted.yardSd);
  const world: DistrictWorld = {
    effects: planted,
    wetness: wetnessBefore(weather),
    yardEffects,
    yardDays: random.stream("yard days"),
  };
  const herd = districtHerd(random.stream("herd"), planted.horseSd);
  const histories = herd.map((horse) => horseHistory(horse, world, random.stream(`horse ${horse.horseId}`)));

  const outlines = districtOutlines(histories, random.stream("outlines"));
  const lines = {
    visits: visitLines([...histories.flatMap(({ rows }) => rows), ...specimenRows()]),
    horses: horseLines(herd),
    changes: [changeLine()],
    weather: weatherLines(weather),
    outlines: outlines.lines,
  };
  const slips = faults ? plantOutlineSlips(lines.outlines) : [];
  if (faults) plantFaults(lines);
  const found = Object.entries(lines).flatMap(([name, of]) => plantedFaults(`${name}.csv`, of));
  const truth = districtTruth(seed, planted, yardEffects, histories, { feet: outlines.truth, faults: slips });
  const study = {
    name: "Ossenvale, an invented district",
    gaugeDay: "ends_on_date",
    settings: { asOf: districtCalendar.lastDay },
  };
  const files = [
    { path: "README.md", text: districtReadme(seed) },
    { path: "study.json", text: jsonText(study) },
    { path: "visits.csv", text: table(visitColumns, lines.visits) },
    { path: "horses.csv", text: table(horseColumns, lines.horses) },
    { path: "yards.csv", text: table(yardColumns, yardLines()) },
    { path: "changes.csv", text: table(changeColumns, lines.changes) },
    { path: "weather.csv", text: table(weatherColumns, lines.weather) },
    { path: "outlines.csv", text: table(outlineColumns, lines.outlines) },
    { path: "truth.json", text: jsonText(truth) },
    ...(faults ? [{ path: "planted-faults.json", text: jsonText(found) }] : []),
  ];
  return { files, truth, faults: found };
}

/** Normal quantiles, so that six yards have the spread they should; the wetter the ground, the higher. */
function spreadOver(sd: number): ReadonlyMap<string, number> {
  const wettestLast = [...districtYards].sort((a, b) => a.wetness - b.wetness);
  return new Map(
    wettestLast.map(({ yardId }, rank) => [yardId, rounded(sd * normalQuantile((rank + 0.5) / wettestLast.length), 4)]),
  );
}

function changeLine(): TextLine {
  const { yardId, changedOn, what } = districtCalendar.bedding;
  return { cells: { yard_id: yardId, changed_on: changedOn, what } };
}

function table(columns: readonly Column[], lines: readonly TextLine[]): string {
  return csvText(
    columns.map(({ name }) => name),
    lines,
  );
}

function jsonText(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}
