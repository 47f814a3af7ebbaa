import type { Source } from "../../study/Source.js";
import type { Fault } from "../report/Fault.js";
import type { IssueLog } from "../report/issueLog.js";
import { messages } from "../report/messages.js";
import type { WeatherFile } from "../StudyJson.js";
import { cellsOf } from "../text/cellsOf.js";
import { isBlank } from "../text/isBlank.js";
import { openText } from "../text/openText.js";
import { readRows } from "../text/readRows.js";
import { ghcnCollector } from "./ghcnCollector.js";
import { ghcnReading } from "./ghcnReading.js";
import type { WeatherRead } from "./WeatherRead.js";

/**
 * Reads a GHCN-Daily by-station CSV file (no header, one row per station, day and element) into gauge days. A reading with a quality flag is
 * set aside, and so is the second reading of one station, day and element, or a gauge day that another weather file has given already (`firstOf` remembers
 * them). Rows of elements and stations that are not used count as accepted and are named once.
 *
 * @throws StudyError `several_stations` when study.json gives one gauge to a file of several stations.
 */
export async function readGhcnByStation(
  path: string,
  named: WeatherFile,
  firstOf: (key: string, source: Source) => Source | null,
  log: IssueLog,
  limitMm: number | null = null,
): Promise<WeatherRead> {
  const { file } = named;
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
  const collector = ghcnCollector(named, (fault, reading) => {
    report(fault, reading, reading.element);
  });

  const text = openText(path, file);
  await readRows(text.blocks, ",", {
    width: () => null,
    fits: () => false,
    row(cut, line) {
      if (isBlank(cut)) return;
      const cells = cellsOf(cut);
      rowsRead += 1;
      const reading = ghcnReading(cells);
      const place = { line, row: rowsRead, value: cells.join(",") };
      if (typeof reading === "string") report(messages.ghcnRow(reading), place, null);
      else if (!collector.uses(reading.station, reading.element, 1)) return;
      else if (reading.qualityFlag !== "") {
        report(messages.ghcnQuality(reading.element, String(reading.value), reading.qualityFlag), place, reading.element);
      } else collector.take({ ...reading, line, row: rowsRead });
    },
    refused(fault, line, value) {
      rowsRead += 1;
      report(messages.line(fault), { line, row: rowsRead, value }, null);
    },
  });

  const records = collector.gaugeDays(firstOf, limitMm);
  collector.sayUnused(log);
  if (rowsRead === 0)
    log.add(messages.noRows("one element of one station and day"), { file, line: null, row: null, column: null, value: null });
  const setAside = setAsideRows.size;
  const input = { file, kind: "weather", ...text.digest(), rowsRead, accepted: rowsRead - setAside, setAside } as const;
  return { records, input, stations: collector.stations() };
}
