import { dayNumber } from "../study/dayNumber.js";
import { grouped } from "../study/grouped.js";
import type { Settings } from "../study/Settings.js";
import type { Study } from "../study/Study.js";
import { StudyError } from "../study/StudyError.js";
import type { ExposureBeforeVisit, ExposureColumn, MissingExposure } from "./ExposureBeforeVisit.js";
import { gaugeExposure, type ExposureChoices, type GaugeExposure } from "./gaugeExposure.js";
import { indexColumn } from "./indexColumn.js";
import { visitGauges } from "./visitGauges.js";

/** Choices of `exposureBeforeVisits`. */
export interface ExposureOptions {
  /** Windows in days; 3, 7, 14, 21, 28 and 42 when left out. */
  readonly windowsDays?: readonly number[] | undefined;
  /** Shares of the antecedent precipitation index that are left after a day; 0.8, 0.85, 0.9, 0.95 and 0.98 when left out. */
  readonly decays?: readonly number[] | undefined;
  /** Least rain of a wet day, mm; 1 when left out. */
  readonly wetDayMm?: number | undefined;
  /** Most water the soil holds for grass, mm; 100 when left out. */
  readonly soilCapacityMm?: number | undefined;
  /** Fewest years from which the usual rain of a month is taken; 2 when left out. */
  readonly minimumNormalYears?: number | undefined;
  /** Degrees north by gauge, before what the study says of its gauges. */
  readonly latitudeDeg?: Readonly<Record<string, number>> | undefined;
}

/**
 * Wetness before every visit in many measures, to be set side by side: one row for each horse and visit day, by day and horse.
 *
 * Method: the gauge of the yard where the horse stood that day and the last admissible reading (`visitGauges`), on which every measure ends.
 * For each window: rain (`rollingRain`), that rain less the usual one of the gauge for the month in which the window ends (`rainNormals`, all years
 * of the record, later ones too), wet days, dewy days (`dewDays`), and days with a surplus of a single-store soil (`soilWetness` on
 * `dailyEvapotranspiration`). For each decay the antecedent precipitation index, from as many days of readings as leave what was before
 * them the weight it has for the decay and the warm-up of the settings. One gauge stands for all fields of a yard: exposure at yard level.
 *
 * Missing: a window with a day that is not known is null, never a part sum; `missing` says why for each column. The usual rain is not given
 * from fewer than `minimumNormalYears` years. The soil needs the latitude of the gauge and unbroken readings of rain and temperature.
 *
 * Errors: `bad_windows`, `bad_decays`, `bad_wet_day`; those of the functions named.
 *
 * Source: wet days of 1 mm as in the ETCCDI indices; the capacity of the soil and the windows are common practice, no source. Many windows and decays are many
 * looks at the same visits: choose one beforehand, or call the rest exploratory.
 */
export function exposureBeforeVisits(
  study: Pick<Study, "visits" | "horses" | "yards" | "weather" | "gauges" | "settings">,
  options: ExposureOptions = {},
): ExposureBeforeVisit[] {
  const choices = choicesOf(options, study.settings);
  const latitudes = new Map((study.gauges ?? []).map(({ gaugeId, latitudeDeg }) => [gaugeId, latitudeDeg]));
  for (const [gaugeId, latitudeDeg] of Object.entries(options.latitudeDeg ?? {})) latitudes.set(gaugeId, latitudeDeg);
  const days = grouped(study.weather, ({ gaugeId }) => gaugeId);
  const gauges = new Map<string, GaugeExposure>();
  const gaugeOf = (gaugeId: string) => {
    const known = gauges.get(gaugeId);
    if (known !== undefined) return known;
    const made = gaugeExposure(days.get(gaugeId)!, latitudes.get(gaugeId) ?? null, choices);
    gauges.set(gaugeId, made);
    return made;
  };
  const names = columnNames(choices);
  // Rows are copied from one that has every column: an object that grows by so many computed names is some ten times slower.
  const blank = Object.fromEntries([...rowKeys, ...names, "missing"].map((name) => [name, null]));
  const measured = new Map<string, Measures>();
  return visitGauges(study).map(({ missing: noGauge, ...keys }) => {
    const key = noGauge === null ? `${keys.gaugeId ?? ""}\n${keys.lastRainDay}` : `\n${noGauge.text}`;
    let measures = measured.get(key);
    if (measures === undefined) {
      measures =
        noGauge === null ? onDay(keys.gaugeId!, gaugeOf(keys.gaugeId!), keys.lastRainDay, names) : withoutGauge(noGauge, names);
      measured.set(key, measures);
    }
    const { linkage, values, missing } = measures;
    const { horseId, visitDate, yardId, gaugeId, gaugeKm, lastRainDay } = keys;
    const row: Record<string, unknown> = {
      ...blank,
      horseId,
      visitDate,
      yardId,
      gaugeId,
      gaugeKm,
      lastRainDay,
      linkage,
      missing,
    };
    names.forEach((name, place) => {
      row[name] = values[place];
    });
    return row as unknown as ExposureBeforeVisit;
  });
}

const rowKeys = ["horseId", "visitDate", "yardId", "gaugeId", "gaugeKm", "lastRainDay", "linkage"] as const;

function columnNames({ windowsDays, decays }: ExposureChoices): ExposureColumn[] {
  const ofWindows = windowsDays.flatMap((days): ExposureColumn[] => [
    ...([`rainMm${days}d`, `rainAnomalyMm${days}d`, `normalYears${days}d`] as const),
    ...([`wetDays${days}d`, `dewDays${days}d`, `surplusDays${days}d`] as const),
  ]);
  return [...ofWindows, ...decays.map(indexColumn), "soilStorageMm"];
}

/** The measures of one gauge on one day, in the order of the column names. */
type Measures = Pick<ExposureBeforeVisit, "linkage" | "missing"> & { readonly values: readonly (number | null)[] };

function onDay(gaugeId: string, gauge: GaugeExposure, lastRainDay: string, names: readonly ExposureColumn[]): Measures {
  const place = dayNumber(lastRainDay)! - gauge.firstDay;
  if (place < 0 || lastRainDay > gauge.last) {
    const text = `the readings of gauge ${gaugeId} run from ${gauge.first} to ${gauge.last}`;
    return { ...withoutGauge({ code: "outside_readings", text }, names), linkage: "outside_readings" };
  }
  const missing: Partial<Record<ExposureColumn, MissingExposure>> = {};
  const values = names.map((name) => {
    const value = gauge.columns.get(name)![place]!;
    if (typeof value === "number") return value;
    missing[name] = value;
    return null;
  });
  const rainMissing = names.some((name) => name.startsWith("rainMm") && missing[name] !== undefined);
  return { linkage: rainMissing ? "missing" : "matched", values, missing };
}

function withoutGauge(reason: MissingExposure, names: readonly ExposureColumn[]): Measures {
  const missing = Object.fromEntries(names.map((name) => [name, reason]));
  return { linkage: "no_gauge", values: names.map(() => null), missing };
}

function choicesOf(options: ExposureOptions, { apiDecayPerDay, apiWarmUpDays }: Settings): ExposureChoices {
  const { wetDayMm = 1, soilCapacityMm = 100, minimumNormalYears = 2 } = options;
  const windowsDays = [...new Set(options.windowsDays ?? [3, 7, 14, 21, 28, 42])];
  const decays = [...new Set(options.decays ?? [0.8, 0.85, 0.9, 0.95, 0.98])];
  const windowsFit = windowsDays.every((days) => Number.isSafeInteger(days) && days >= 1);
  refuseUnless(windowsFit, "bad_windows", `Windows of ${windowsDays.join(", ")} days`, "whole numbers of days, 1 or more");
  const decaysFit = decays.every((decay) => decay > 0 && decay < 1);
  refuseUnless(decaysFit, "bad_decays", `Decays of ${decays.join(", ")} a day`, "numbers between 0 and 1");
  refuseUnless(wetDayMm > 0 && wetDayMm < Infinity, "bad_wet_day", `Wet days of ${wetDayMm} mm`, "a number of mm above 0");
  const warmUpDays = (decay: number) => {
    const days = (apiWarmUpDays * Math.log(apiDecayPerDay)) / Math.log(decay);
    return Math.max(1, Math.ceil(days - 1e-9));
  };
  return { windowsDays, decays, wetDayMm, soilCapacityMm, minimumNormalYears, warmUpDays };
}

function refuseUnless(sound: boolean, code: string, what: string, wanted: string): void {
  if (!sound) throw new StudyError(code, `${what} make no sense here.`, `Give ${wanted}.`);
}
