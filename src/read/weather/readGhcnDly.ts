import type { InputFile } from "../../study/DataReport.js";
import type { GaugeDay } from "../../study/GaugeDay.js";
import { grouped } from "../../study/grouped.js";
import type { Source } from "../../study/Source.js";
import type { Fault } from "../report/Fault.js";
import type { IssueLog } from "../report/issueLog.js";
import { messages } from "../report/messages.js";
import type { WeatherFile } from "../StudyJson.js";
import { openText } from "../text/openText.js";
import { dlyLine } from "./dlyLine.js";
import { ghcnCollector } from "./ghcnCollector.js";
import type { WeatherRead } from "./WeatherRead.js";

/**
 * Reads a GHCN-Daily .dly file (fixed width, one line per station, element and month) into gauge days, by gauge and day. A row is a line: one that does not keep
 * to its columns, or gives a station, element and month a second time, is set aside; a reading with a quality flag costs that day's
 * cell only. Lines of elements and stations that are not used count as accepted and are named once.
 *
 * @throws StudyError `several_stations` when study.json gives one gauge to a file of several stations.
 */
export async function readGhcnDly(
  path: string,
  named: WeatherFile,
  firstOf: (key: string, source: Source) => Source | null,
  log: IssueLog,
  limitMm: number | null = null,
): Promise<WeatherRead> {
  const { file } = named;
  const lines = new Map<string, number>();
  let [line, rowsRead, setAside] = [0, 0, 0];

  const refuse = (fault: Fault, column: string | null, text: string) => {
    setAside += 1;
    log.add(fault, { file, line, row: rowsRead, column, value: text });
  };
  // One line holds a month, so each report says the day; the other days of the line are kept.
  const collector = ghcnCollector(named, (fault, { line, row, date, element, value }) => {
    const severity = fault.severity === "set_aside" ? "cell_blanked" : fault.severity;
    const said: Fault = { ...fault, severity, found: `on ${date} ${fault.found}` };
    log.add(said, { file, line, row, column: element, value: String(value) });
  });

  const takeLine = (text: string) => {
    const month = dlyLine(text);
    if ("found" in month) {
      refuse(messages.dlyLine(month.found), month.field, text);
      return;
    }
    const { station, element, readings } = month;
    const key = `${station} ${element} ${month.month}`;
    const first = lines.get(key);
    if (first !== undefined) {
      refuse(messages.duplicate(`${element} of this station and month`, null, first), element, text);
      return;
    }
    lines.set(key, line);
    if (!collector.uses(station, element, readings.length)) return;
    for (const reading of readings) {
      const place = { line, row: rowsRead, column: element, value: String(reading.value) };
      if (reading.qualityFlag === "") collector.take({ ...reading, line, row: rowsRead });
      else log.add(messages.ghcnQualityOfDay(element, reading.date, place.value, reading.qualityFlag), { file, ...place });
    }
  };

  const text = openText(path, file);
  for await (const { lines: block, faults } of text.blocks) {
    for (const [index, content] of block.entries()) {
      line += 1;
      const fault = faults.get(index);
      if (fault === undefined && content.trim() === "") continue;
      rowsRead += 1;
      if (fault === undefined) takeLine(content);
      else refuse(messages.line(fault), null, content);
    }
  }
  const records = inOrder(collector.gaugeDays(firstOf, limitMm));
  collector.sayUnused(log);
  if (rowsRead === 0) {
    log.add(messages.noRows("one element of one station and month"), { file, line: null, row: null, column: null, value: null });
  }
  const input: InputFile = { file, kind: "weather", ...text.digest(), rowsRead, accepted: rowsRead - setAside, setAside };
  return { records, input, stations: collector.stations() };
}

// Days are met element by element, month by month.
function inOrder(days: readonly GaugeDay[]): GaugeDay[] {
  return [...grouped(days, ({ gaugeId }) => gaugeId).values()].flatMap((ofGauge) =>
    ofGauge.sort((a, b) => (a.date < b.date ? -1 : 1)),
  );
}
