import type { InputFile } from "../../study/DataReport.js";
import type { Gauge } from "../../study/Gauge.js";
import type { Fault } from "../report/Fault.js";
import type { IssueLog } from "../report/issueLog.js";
import { messages } from "../report/messages.js";
import { openText } from "../text/openText.js";
import { stationLine } from "./stationLine.js";

/**
 * Reads the list of GHCN-Daily stations, ghcnd-stations.txt, for the place of some gauges, given by station. A row is a line; a line not of the form, and the second one of a
 * station that is wanted, is set aside. Lines of other stations count as accepted. A station that is not in the list is named in the report.
 */
export async function readStationList(
  path: string,
  file: string,
  gaugeOf: ReadonlyMap<string, string>,
  log: IssueLog,
): Promise<{ readonly gauges: readonly Gauge[]; readonly input: InputFile }> {
  const found = new Map<string, Gauge & { readonly line: number }>();
  let [line, rowsRead, setAside] = [0, 0, 0];
  const refuse = (fault: Fault, value: string) => {
    setAside += 1;
    log.add(fault, { file, line, row: rowsRead, column: null, value });
  };
  const text = openText(path, file);
  for await (const { lines, faults } of text.blocks) {
    for (const [index, content] of lines.entries()) {
      line += 1;
      const lineFault = faults.get(index);
      if (lineFault === undefined && content.trim() === "") continue;
      rowsRead += 1;
      if (lineFault !== undefined) {
        refuse(messages.line(lineFault), content);
        continue;
      }
      const place = stationLine(content);
      if (typeof place === "string") {
        refuse(messages.stationLine(place), content);
        continue;
      }
      const { station, ...where } = place;
      const gaugeId = gaugeOf.get(station);
      if (gaugeId === undefined) continue;
      const first = found.get(station);
      if (first === undefined) found.set(station, { gaugeId, ...where, line });
      else refuse(messages.duplicate("the station", null, first.line), content);
    }
  }
  for (const station of gaugeOf.keys()) {
    if (found.has(station)) continue;
    log.add(messages.stationNotListed(station), { file, line: null, row: null, column: null, value: station });
  }
  const gauges = [...found.values()].map(({ gaugeId, latitudeDeg, longitudeDeg, elevationM }) => {
    return { gaugeId, latitudeDeg, longitudeDeg, elevationM };
  });
  const input: InputFile = { file, kind: "stations", ...text.digest(), rowsRead, accepted: rowsRead - setAside, setAside };
  return { gauges, input };
}
