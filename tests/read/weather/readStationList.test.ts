import { join } from "node:path";
import { expect, test } from "vitest";
import { issueLog } from "../../../src/read/report/issueLog.js";
import { readStationList } from "../../../src/read/weather/readStationList.js";
import { inFolder } from "../folder.js";

// Invented stations in the columns of ghcnd-stations.txt (NOAA, GHCN-Daily readme.txt): ID 1-11, LATITUDE 13-20, LONGITUDE 22-30,
// ELEVATION 32-37, STATE 39-40, NAME 42-71, GSN FLAG 73-75, HCN/CRN FLAG 77-79, WMO ID 81-85.
const stationRow = (id: string, latitude: string, longitude: string, elevation: string) =>
  `${id.padEnd(11)} ${latitude.padStart(8)} ${longitude.padStart(9)} ${elevation.padStart(6)}    ${"OSSEN WEIR".padEnd(30)}              `;
const mill = stationRow("XX000000001", "53.2000", "-7.1500", "81.0");
const south = stationRow("XX000000002", "-23.7951", "133.8890", "-999.9");

async function read(text: string, wanted: Readonly<Record<string, string>>) {
  return inFolder({ "stations.txt": text }, async (folder) => {
    const log = issueLog();
    const found = await readStationList(join(folder, "stations.txt"), "stations.txt", new Map(Object.entries(wanted)), log);
    return { ...found, issues: log.issues(["stations.txt"]) };
  });
}

test("the wanted stations get their place, a missing height is null", async () => {
  expect(mill).toHaveLength(85);
  const { gauges, input, issues } = await read(`${mill}\n${south}\n`, { XX000000001: "Mill", XX000000002: "South" });
  expect(gauges).toEqual([
    { gaugeId: "Mill", latitudeDeg: 53.2, longitudeDeg: -7.15, elevationM: 81 },
    { gaugeId: "South", latitudeDeg: -23.7951, longitudeDeg: 133.889, elevationM: null },
  ]);
  expect(input).toMatchObject({ file: "stations.txt", kind: "stations", rowsRead: 2, accepted: 2, setAside: 0 });
  expect(issues).toEqual([]);
});

test("stations that are not wanted are passed over; one that is not listed is named", async () => {
  const { gauges, issues } = await read(mill, { XX000000001: "Mill", XX000000003: "Far" });
  expect(gauges.map(({ gaugeId }) => gaugeId)).toEqual(["Mill"]);
  expect(issues).toMatchObject([{ code: "station_not_listed", value: "XX000000003", severity: "warning" }]);
  expect((await read(`${mill}\n${south}`, { XX000000002: "S" })).gauges.map(({ gaugeId }) => gaugeId)).toEqual(["S"]);
});

test("lines out of their columns and second lines are set aside with their line", async () => {
  const shifted = mill.replace("XX000000001 ", "XX000000001");
  const lines = [
    shifted,
    mill.replace(" 53.2000", " 93.2000"),
    mill.replace(" -7.1500", "-187.150"),
    mill.replace("  81.0", " high "),
    "? not a station",
    "",
    mill,
    mill,
  ];
  const { gauges, input, issues } = await read(lines.join("\n"), { XX000000001: "Mill" });
  expect(gauges).toHaveLength(1);
  expect(issues.map(({ line, code }) => [line, code])).toEqual([
    ...[1, 2, 3, 4, 5].map((line) => [line, "bad_station_line"]),
    [8, "duplicate_row"],
  ]);
  expect(input).toMatchObject({ rowsRead: 7, accepted: 1, setAside: 6 });
});
