import { defaultSettings } from "../src/study/defaultSettings.js";
import { fieldName } from "../src/study/fieldName.js";
import { horseColumns } from "../src/study/horseColumns.js";
import type { HorseStay } from "../src/study/HorseStay.js";
import type { Study } from "../src/study/Study.js";
import { weatherColumns } from "../src/study/weatherColumns.js";
import type { GaugeDay } from "../src/study/GaugeDay.js";
import { yardColumns } from "../src/study/yardColumns.js";
import type { Yard } from "../src/study/Yard.js";
import type { Column } from "../src/study/Column.js";

const none = { read: 0, accepted: 0, setAside: 0 };
const empty = (columns: readonly Column[]) => Object.fromEntries(columns.map((column) => [fieldName(column.name), null]));

/** A study for a test; what is not named is empty. */
export function studyOf(parts: Partial<Study> = {}): Study {
  return {
    name: "A study for a test",
    settings: defaultSettings,
    visits: [],
    horses: [],
    yards: [],
    changes: [],
    weather: [],
    outlines: [],
    report: { inputs: [], flow: { footVisits: none, visits: none, horses: none, yards: none }, counts: [], issues: [] },
    ...parts,
  };
}

export function horseStay(cells: Partial<HorseStay> & { horseId: string }): HorseStay {
  return { ...(empty(horseColumns) as unknown as HorseStay), file: "horses.csv", line: 2, ...cells };
}

export function yard(cells: Partial<Yard> & { yardId: string }): Yard {
  return { ...(empty(yardColumns) as unknown as Yard), file: "yards.csv", line: 2, ...cells };
}

export function gaugeDay(cells: Partial<GaugeDay> & { gaugeId: string; date: string }): GaugeDay {
  return { ...(empty(weatherColumns) as unknown as GaugeDay), file: "weather.csv", line: 2, ...cells };
}
