import type { InputFile } from "../../study/DataReport.js";
import type { Gauge } from "../../study/Gauge.js";
import type { GaugeDay } from "../../study/GaugeDay.js";
import type { Source } from "../../study/Source.js";
import type { IssueLog } from "../report/issueLog.js";
import { messages } from "../report/messages.js";
import { nearestKnown } from "../rules/nearestKnown.js";
import type { StudyJson } from "../StudyJson.js";
import { studyPath } from "../text/studyPath.js";
import { readGhcnByStation } from "./readGhcnByStation.js";
import { readGhcnDly } from "./readGhcnDly.js";
import { readStationList } from "./readStationList.js";

/** The weather of a study and where its gauges stand. */
export interface WeatherOfStudy {
  readonly weather: readonly GaugeDay[];
  readonly gauges: readonly Gauge[];
  readonly inputs: readonly InputFile[];
}

/**
 * Reads the weather files that `study.json` names, each in its format, after the rows of weather.csv (`table`), and the places of the gauges: what `study.json` states of a
 * gauge counts before what the list of stations says.
 *
 * @throws StudyError when a file as a whole cannot be used.
 */
export async function readWeatherFiles(
  folder: string,
  json: StudyJson,
  table: readonly GaugeDay[],
  firstOf: (key: string, source: Source) => Source | null,
  log: IssueLog,
): Promise<WeatherOfStudy> {
  const weather = [...table];
  const inputs: InputFile[] = [];
  const stations = new Map<string, string>();
  for (const named of json.weather ?? []) {
    const path = (await studyPath(folder, named.file, true)) ?? "";
    const read = named.format === "ghcn-dly" ? readGhcnDly : readGhcnByStation;
    const found = await read(path, named, firstOf, log, json.settings?.dailyRainLimitMm ?? null);
    inputs.push(found.input);
    for (const day of found.records) weather.push(day);
    for (const [station, gauge] of found.stations) stations.set(station, gauge);
  }
  const places = new Map<string, Gauge>();
  if (json.stationList !== undefined) {
    const path = (await studyPath(folder, json.stationList, true)) ?? "";
    const listed = await readStationList(path, json.stationList, stations, log);
    inputs.push(listed.input);
    for (const gauge of listed.gauges) places.set(gauge.gaugeId, gauge);
  }
  const known = new Set(weather.map(({ gaugeId }) => gaugeId));
  const nearest = nearestKnown(known);
  for (const { gauge: gaugeId, latitudeDeg, longitudeDeg = null, elevationM = null } of json.gauges ?? []) {
    places.set(gaugeId, { gaugeId, latitudeDeg, longitudeDeg, elevationM });
    if (known.size === 0 || known.has(gaugeId)) continue;
    const place = { file: "study.json", line: null, row: null, column: null, value: gaugeId };
    log.add(messages.gaugeWithoutReadings(gaugeId, nearest(gaugeId)), place);
  }
  return { weather, gauges: [...places.values()], inputs };
}
