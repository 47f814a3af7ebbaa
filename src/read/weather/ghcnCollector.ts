import type { GaugeDay } from "../../study/GaugeDay.js";
import type { Source } from "../../study/Source.js";
import type { IssueLog } from "../report/issueLog.js";
import { messages } from "../report/messages.js";
import { refusals } from "../report/refusals.js";
import { nearestKnown } from "../rules/nearestKnown.js";
import type { WeatherFile } from "../StudyJson.js";
import { ownCopy } from "../text/ownCopy.js";
import { ghcnGaugeDays, type ReportReading } from "./ghcnGaugeDays.js";
import type { PlacedReading, StationDay } from "./StationDay.js";

const USED = new Set(["PRCP", "TMIN", "TMAX", "MDPR", "DAPR", "ADPT", "RHAV"]);
const MISSING = -9999;

/** Gathers the readings of one GHCN-Daily file, whatever its form. */
export interface GhcnCollector {
  /** Whether readings of this station and element are used; those that are not are counted. */
  uses(station: string, element: string, readings: number): boolean;
  take(reading: PlacedReading): void;
  /** The gauge days; days another weather file gave already (`firstOf` remembers them) are left out with their reason. */
  gaugeDays(firstOf: (key: string, source: Source) => Source | null, limitMm: number | null): GaugeDay[];
  /** The gauge of every station that gave a day. */
  stations(): ReadonlyMap<string, string>;
  /** Says once for each element, and once for all stations, what was passed over. */
  sayUnused(log: IssueLog): void;
}

/**
 * An empty collector for one file. The second reading of one station, day and element is reported, not used.
 *
 * @throws StudyError `several_stations`, from `gaugeDays`, when study.json gives one gauge to a file of several stations.
 */
export function ghcnCollector({ file, gauge, stations }: WeatherFile, report: ReportReading): GhcnCollector {
  const days = new Map<string, StationDay>();
  const names = new Map<string, string>();
  const unusedElements = new Map<string, number>();
  const unusedStations = new Map<string, number>();
  const count = (counts: Map<string, number>, name: string, readings: number) =>
    counts.set(ownCopy(name), (counts.get(name) ?? 0) + readings);
  const gaugeOf = (station: string) => gauge ?? stations?.[station] ?? station;

  return {
    uses(station, element, readings) {
      const wanted = stations === undefined || Object.hasOwn(stations, station);
      if (!wanted) count(unusedStations, station, readings);
      else if (!USED.has(element)) count(unusedElements, element, readings);
      return wanted && USED.has(element);
    },
    take(reading) {
      const { date, element } = reading;
      // A total or its number of days that is missing says nothing, and must not mark the day.
      if (reading.value === MISSING && (element === "MDPR" || element === "DAPR")) {
        report(messages.ghcnMissing(element), reading);
        return;
      }
      const station = names.get(reading.station) ?? ownCopy(reading.station);
      names.set(station, station);
      const key = `${station} ${date}`;
      const day = days.get(key) ?? { station, date, readings: new Map<string, PlacedReading>() };
      days.set(key, day);
      const first = day.readings.get(element);
      if (first === undefined) day.readings.set(element, { ...reading, station });
      else report(messages.duplicate(`${element} of this station and day`, null, first.line), reading);
    },
    gaugeDays(firstOf, limitMm) {
      if (gauge !== undefined && names.size > 1) throw refusals.severalStations(file, [...names.keys()]);
      for (const [key, { station, date, readings }] of days) {
        const [first] = readings.values();
        const earlier = firstOf(JSON.stringify([gaugeOf(station), date]), { file, line: first?.line ?? 0 });
        if (earlier === null) continue;
        for (const reading of readings.values()) {
          report(messages.duplicate("a reading of this gauge and day", earlier.file, earlier.line), reading);
        }
        days.delete(key);
      }
      return ghcnGaugeDays(file, days, gaugeOf, report, limitMm);
    },
    stations: () => new Map([...names.keys()].map((station) => [station, gaugeOf(station)])),
    sayUnused(log) {
      const say = (fault: ReturnType<typeof messages.ghcnDaysUnknown>, value: string | null) => {
        log.add(fault, { file, line: null, row: null, column: null, value });
      };
      for (const [element, readings] of unusedElements) say(messages.ghcnUnused(element, readings), element);
      const passedOver = [...unusedStations.values()].reduce((sum, readings) => sum + readings, 0);
      if (unusedStations.size > 0) say(messages.ghcnStationsUnused(unusedStations.size, passedOver), null);
      const nearest = nearestKnown(unusedStations.keys());
      for (const station of Object.keys(stations ?? {})) {
        if (!names.has(station)) say(messages.ghcnStationAbsent(station, nearest(station)), station);
      }
    },
  };
}
