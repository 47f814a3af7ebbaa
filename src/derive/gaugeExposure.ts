import { dayNumber } from "../study/dayNumber.js";
import type { GaugeDay } from "../study/GaugeDay.js";
import { antecedentPrecipitation } from "./antecedentPrecipitation.js";
import { dailyEvapotranspiration } from "./dailyEvapotranspiration.js";
import { dailyRain } from "./dailyRain.js";
import { dewDays } from "./dewDays.js";
import type { ExposureColumn, MissingExposure } from "./ExposureBeforeVisit.js";
import { indexColumn } from "./indexColumn.js";
import { movingTotals } from "./movingTotals.js";
import { rainNormals } from "./rainNormals.js";
import { rollingRain } from "./rollingRain.js";
import { soilWetness } from "./soilWetness.js";

/** Every choice of the exposures, filled in. */
export interface ExposureChoices {
  readonly windowsDays: readonly number[];
  readonly decays: readonly number[];
  readonly wetDayMm: number;
  readonly soilCapacityMm: number;
  readonly minimumNormalYears: number;
  /** Days of readings an index of this decay needs. */
  readonly warmUpDays: (decay: number) => number;
}

/** The exposures of one gauge on each of its days. */
export interface GaugeExposure {
  readonly first: string;
  readonly last: string;
  readonly firstDay: number;
  readonly columns: ReadonlyMap<ExposureColumn, readonly (number | MissingExposure)[]>;
}

type NamedColumn = readonly [ExposureColumn, readonly (number | MissingExposure)[]];

/** Every exposure column of one gauge, day by day from its first to its last row, so that a visit is one look-up. @private */
export function gaugeExposure(days: readonly GaugeDay[], latitudeDeg: number | null, choices: ExposureChoices): GaugeExposure {
  const record = dailyRain(days);
  const limit = Math.round(choices.wetDayMm * 1000);
  const wet = record.map(({ rainMicrometres: rain }) => (rain === null ? null : Number(rain >= limit)));
  const dew = dewDays(days).map((day) => (day.dew === null ? null : Number(day.dew)));
  const soil =
    latitudeDeg === null ? null : soilWetness(dailyEvapotranspiration(days, latitudeDeg), { capacityMm: choices.soilCapacityMm });
  const surplus = soil?.map(({ surplusMm }) => (surplusMm === null ? null : Number(surplusMm > 0))) ?? null;
  const noLatitude: MissingExposure = { code: "no_latitude", text: "the latitude of the gauge is not known" };
  const soilUnknown: MissingExposure = { code: "soil_unknown", text: "how full the soil was before cannot be told" };

  const ofWindow = (windowDays: number): NamedColumn[] => {
    const rain = rollingRain(days, windowDays).map(({ rainMm, daysMissing, accumulated }): number | MissingExposure => {
      if (rainMm !== null) return rainMm;
      if (accumulated) return { code: "accumulated", text: `a total of several days lies in the ${windowDays} days` };
      return { code: "days_missing", text: `${daysMissing} of ${windowDays} days have no reading` };
    });
    const normals = rainNormals(days, windowDays, { minimumYears: choices.minimumNormalYears });
    const normalOf = (place: number) => normals[Number(record[place]!.date.slice(5, 7)) - 1]!;
    const anomaly = rain.map((amount, place): number | MissingExposure => {
      if (typeof amount !== "number") return amount;
      const { normalMm, years } = normalOf(place);
      if (normalMm !== null) return amount - normalMm;
      const text = `that month is known in ${years} ${years === 1 ? "year" : "years"}, ${choices.minimumNormalYears} are needed`;
      return { code: "short_record", text };
    });
    const counted = (values: readonly (number | null)[], why: (place: number) => MissingExposure) =>
      movingTotals(values, windowDays).map((count, place) => count ?? why(place));
    const noDew: MissingExposure = { code: "no_dew_point", text: `a dew point is not known on each of the ${windowDays} days` };
    return [
      [`rainMm${windowDays}d`, rain],
      [`rainAnomalyMm${windowDays}d`, anomaly],
      [`normalYears${windowDays}d`, record.map((_, place) => normalOf(place).years)],
      [`wetDays${windowDays}d`, counted(wet, (place) => rain[place] as MissingExposure)],
      [`dewDays${windowDays}d`, counted(dew, () => noDew)],
      [`surplusDays${windowDays}d`, surplus === null ? record.map(() => noLatitude) : counted(surplus, () => soilUnknown)],
    ];
  };
  const ofDecay = (decayPerDay: number): NamedColumn => {
    const warmUpDays = choices.warmUpDays(decayPerDay);
    const index = antecedentPrecipitation(days, { decayPerDay, warmUpDays });
    const values = index.map(({ apiMm, unbrokenDays }): number | MissingExposure => {
      return apiMm ?? { code: "warm_up", text: `${unbrokenDays} unbroken days of readings, ${warmUpDays} are needed` };
    });
    return [indexColumn(decayPerDay), values];
  };
  const storage = soil?.map(({ storageMm }) => storageMm ?? soilUnknown) ?? record.map(() => noLatitude);
  const [first, last] = [record[0]!.date, record.at(-1)!.date];
  const columns = new Map([
    ...choices.windowsDays.flatMap(ofWindow),
    ...choices.decays.map(ofDecay),
    ["soilStorageMm", storage] satisfies NamedColumn,
  ]);
  return { first, last, firstDay: dayNumber(first)!, columns };
}
