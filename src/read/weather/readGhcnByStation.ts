import type { InputFile } from "../../study/DataReport.js";
import type { GaugeDay } from "../../study/GaugeDay.js";
import type { Source } from "../../study/Source.js";
import type { Fault } from "../report/Fault.js";
import type { IssueLog } from "../report/issueLog.js";
import { messages } from "../report/messages.js";
import { refusals } from "../report/refusals.js";
import type { WeatherFile } from "../StudyJson.js";
import { openText } from "../text/openText.js";
import { ownCopy } from "../text/ownCopy.js";
import { readRows } from "../text/readRows.js";
import { ghcnGaugeDays } from "./ghcnGaugeDays.js";
import { ghcnReading } from "./ghcnReading.js";
import type { PlacedReading, StationDay } from "./StationDay.js";

const USED = new Set(["PRCP", "TMIN", "TMAX", "MDPR", "DAPR"]);

/**
 * Reads a GHCN-Daily by-station CSV file (no header, one row per station, day and element) into gauge days. A reading with a quality flag is
 * set aside, and so is the second reading of one station, day and element, or a gauge day that another weather file has given already (`firstOf` remembers
 * them). Rows of elements that are not used count as accepted and are named once.
 *
 * @throws StudyError `several_stations` when study.json gives one gauge to a file of several stations.
 */
export async function readGhcnByStation(
  path: string,
  { file, gauge }: WeatherFile,
  firstOf: (key: string, source: Source) => Source | null,
  log: IssueLog,
): Promise<{ readonly records: GaugeDay[]; readonly input: InputFile }> {
  const days = new Map<string, StationDay>();
  const unused = new Map<string, number>();
  const setAsideRows = new Set<number>();
  let rowsRead = 0;

  const report = (
    fault: Fault,
    { line, row, value }: { line: number; row: number; value: string | number | null },
    column: string | null,
  ) => {
    if (fault.severity === "set_aside") setAsideRows.add(row);
    log.add(fault, { file, line, row, column, value: value === null ? null : String(value) });
  };

  const text = openText(path, file);
  await readRows(text.blocks, ",", {
    width: () => null,
    fits: () => false,
    row(cells, line) {
      if (cells.every((cell) => cell.trim() === "")) return;
      rowsRead += 1;
      const reading = ghcnReading(cells);
      const place = { line, row: rowsRead, value: cells.join(",") };
      if (typeof reading === "string") report(messages.ghcnRow(reading), place, null);
      else if (!USED.has(reading.element)) unused.set(reading.element, (unused.get(reading.element) ?? 0) + 1);
      else if (reading.qualityFlag !== "") {
        report(messages.ghcnQuality(reading.element, String(reading.value), reading.qualityFlag), place, reading.element);
      } else take({ ...reading, station: ownCopy(reading.station), line, row: rowsRead });
    },
    refused(fault, line, value) {
      rowsRead += 1;
      report(messages.line(fault), { line, row: rowsRead, value }, null);
    },
  });

  function take(reading: PlacedReading): void {
    const { station, date, element } = reading;
    const key = `${station} ${date}`;
    const day = days.get(key) ?? { station, date, readings: new Map<string, PlacedReading>() };
    days.set(key, day);
    const first = day.readings.get(element);
    if (first === undefined) day.readings.set(element, reading);
    else report(messages.duplicate(`${element} of this station and day`, null, first.line), reading, element);
  }

  const stations = [...new Set([...days.values()].map(({ station }) => station))];
  if (gauge !== undefined && stations.length > 1) throw refusals.severalStations(file, stations);
  for (const [key, day] of days) {
    const [first] = day.readings.values();
    const earlier = firstOf(JSON.stringify([gauge ?? day.station, day.date]), { file, line: first?.line ?? 0 });
    if (earlier === null) continue;
    for (const reading of day.readings.values()) {
      report(messages.duplicate("a reading of this gauge and day", earlier.file, earlier.line), reading, reading.element);
    }
    days.delete(key);
  }
  const records = ghcnGaugeDays(file, days, gauge, (fault, reading) => {
    report(fault, reading, reading.element);
  });
  for (const [element, count] of unused) {
    log.add(messages.ghcnUnused(element, count), { file, line: null, row: null, column: null, value: element });
  }
  if (rowsRead === 0)
    log.add(messages.noRows("one element of one station and day"), { file, line: null, row: null, column: null, value: null });
  const setAside = setAsideRows.size;
  return { records, input: { file, kind: "weather", ...text.digest(), rowsRead, accepted: rowsRead - setAside, setAside } };
}
