import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { faults, refusalOf, studyFrom } from "../folder.js";

const visits = "visit_date,horse_id,foot\n2024-03-05,Ash,LF\n";
const months = readFileSync("tests/reference/ghcn-daily/months.dly", "utf8");
const byStation = readFileSync("tests/reference/ghcn-daily/by-station.csv", "utf8");
const list = `${"XX000000001  53.2000   -7.1500   81.0    OSSEN WEIR".padEnd(85)}\n`;
const study = (more: object, files: Readonly<Record<string, string>>) =>
  studyFrom({
    "study.json": JSON.stringify({ name: "T", gaugeDay: "ends_on_date", ...more }),
    "visits.csv": visits,
    ...files,
  });

test("a study of monthly lines: rain, its gauge by name, and where the gauge stands", async () => {
  const found = await study(
    {
      weather: [{ file: "months.dly", format: "ghcn-dly", stations: { XX000000001: "Weir" } }],
      stationList: "ghcnd-stations.txt",
    },
    { "months.dly": months, "ghcnd-stations.txt": list, "yards.csv": "yard_id,gauge_id\nLow,Weir\n" },
  );
  expect(found.weather).toHaveLength(58);
  expect(found.weather.every(({ gaugeId, file }) => gaugeId === "Weir" && file === "months.dly")).toBe(true);
  expect(found.gauges).toEqual([{ gaugeId: "Weir", latitudeDeg: 53.2, longitudeDeg: -7.15, elevationM: 81 }]);
  expect(found.report.inputs.map(({ file, kind }) => [file, kind])).toEqual([
    ["study.json", "study"],
    ["visits.csv", "visits"],
    ["yards.csv", "yards"],
    ["months.dly", "weather"],
    ["ghcnd-stations.txt", "stations"],
  ]);
});

test("what study.json states of a gauge counts before the list, and a gauge without readings is named", async () => {
  const found = await study(
    {
      weather: [{ file: "months.dly", format: "ghcn-dly", gauge: "Weir" }],
      stationList: "ghcnd-stations.txt",
      gauges: [
        { gauge: "Weir", latitudeDeg: 53.4 },
        { gauge: "Wier", latitudeDeg: 50, longitudeDeg: 4, elevationM: 12 },
      ],
    },
    { "months.dly": months, "ghcnd-stations.txt": list },
  );
  expect(found.gauges).toEqual([
    { gaugeId: "Weir", latitudeDeg: 53.4, longitudeDeg: null, elevationM: null },
    { gaugeId: "Wier", latitudeDeg: 50, longitudeDeg: 4, elevationM: 12 },
  ]);
  expect(faults(found).filter((fault) => fault.startsWith("study.json"))).toEqual([
    "study.json:- - gauge_without_readings warning",
  ]);
  expect(found.report.issues.find(({ code }) => code === "gauge_without_readings")?.hint).toContain("Weir");
});

test("a study that says nothing of its gauges has no list of them", async () => {
  const found = await study({}, { "weather.csv": "gauge_id,date,rain_mm\nG,2024-03-01,3\n" });
  expect("gauges" in found).toBe(false);
});

test("a day that two files give is used once, the earlier file first", async () => {
  const found = await study(
    {
      weather: [
        { file: "days.csv", format: "ghcn-by-station" },
        { file: "months.dly", format: "ghcn-dly" },
      ],
    },
    { "days.csv": byStation, "months.dly": months },
  );
  expect(new Set(found.weather.map(({ date }) => date)).size).toBe(found.weather.length);
  expect(found.weather.find(({ date }) => date === "2024-02-02")).toMatchObject({ file: "days.csv", rainMm: 12.3 });
  expect(found.weather.find(({ date }) => date === "2024-02-05")).toMatchObject({ file: "months.dly", rainMm: 0 });
  const doubled = found.report.counts.filter(({ code }) => code === "duplicate_row");
  // The five days of the first file, of which the second holds rain and temperature.
  expect(doubled.map(({ file, column, count, severity }) => [file, column, count, severity])).toEqual([
    ["months.dly", "PRCP", 5, "cell_blanked"],
    ["months.dly", "TMAX", 5, "cell_blanked"],
  ]);
});

test("rain that the place does not believe is kept with a warning, in every form", async () => {
  const settings = { dailyRainLimitMm: 12 };
  const table = await study({ settings }, { "weather.csv": "gauge_id,date,rain_mm\nG,2024-03-01,12\nG,2024-03-02,12.1\n" });
  expect(faults(table)).toEqual(["weather.csv:3 rain_mm rain_over_limit warning"]);
  expect(table.weather[1]?.rainMm).toBe(12.1);
  expect(table.settings.dailyRainLimitMm).toBe(12);
  for (const [file, text, format] of [
    ["days.csv", byStation, "ghcn-by-station"],
    ["months.dly", months, "ghcn-dly"],
  ] as const) {
    const found = await study({ settings, weather: [{ file, format }] }, { [file]: text });
    const over = found.report.issues.filter(({ code }) => code === "rain_over_limit");
    expect(over.map(({ value }) => value)).toEqual(["123", "254"]);
  }
});

test("a list of stations that is not there is a fault of the folder", async () => {
  expect(await refusalOf({ "study.json": '{"name":"T","stationList":"stations.txt"}', "visits.csv": visits })).toMatchObject({
    code: "file_missing",
  });
});
