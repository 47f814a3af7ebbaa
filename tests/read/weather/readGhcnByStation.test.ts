import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { issueLog } from "../../../src/read/report/issueLog.js";
import { firstLines } from "../../../src/read/rules/firstLines.js";
import { readGhcnByStation } from "../../../src/read/weather/readGhcnByStation.js";

async function read(text: string, gauge?: string) {
  const folder = mkdtempSync(join(tmpdir(), "underfoot-"));
  try {
    writeFileSync(join(folder, "rain.csv"), text);
    const log = issueLog();
    const { records, input } = await readGhcnByStation(
      join(folder, "rain.csv"),
      { file: "rain.csv", format: "ghcn-by-station", gauge },
      firstLines(),
      log,
    );
    const issues = log.issues(["rain.csv"]);
    return {
      records,
      input,
      issues,
      days: records.map(({ date, rainMm, flag }) => [date, rainMm, flag]),
      codes: issues.map(({ line, code, severity }) => `${String(line)} ${code} ${severity}`),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

// tests/reference/ghcn-daily/by-station.csv (see the README there): what a reader must make of it by readme.txt section III: tenths of
// mm, T is a trace, any quality flag excludes, B (two 12-hour totals) is an ordinary reading.
test("the synthetic by-station sample", async () => {
  const { records, days, input, codes } = await read(readFileSync("tests/reference/ghcn-daily/by-station.csv", "utf8"));
  expect(days).toEqual([
    ["2024-02-01", 0, "trace"],
    ["2024-02-02", 12.3, null],
    ["2024-02-15", 1, null],
    ["2024-02-16", 0.9, null],
    ["2024-02-29", 25.4, null],
  ]);
  expect(codes).toEqual(["3 quality_flag set_aside"]);
  expect(input).toMatchObject({
    kind: "weather",
    rowsRead: 6,
    accepted: 5,
    setAside: 1,
    sha256: "809a14208c6bc8c62cbd39f2f56172bfeb9b0da212d7e8a7daa3e95196adb3d5",
  });
  expect(records.every(({ gaugeId }) => gaugeId === "XX000000001")).toBe(true);
  const rain = records.map(({ rainMm }) => rainMm ?? 0);
  expect(rain.reduce((sum, mm) => sum + mm, 0)).toBeCloseTo(39.6, 9);
  const wet = rain.filter((mm) => mm >= 1); // wet day of the ETCCDI indices: 1 mm or more
  expect(wet).toHaveLength(3);
  expect(wet.reduce((sum, mm) => sum + mm, 0)).toBeCloseTo(38.7, 9);
});

// March 2024: a total of 30.0 mm on the 4th over 3 days, and a zero that is only presumed (M-flag P) on the same day.
test("a several-day total is put on no day, and a presumed zero is missing", async () => {
  const { days, codes } = await read(
    [
      "XX1,20240301,PRCP,5,,,E,",
      "XX1,20240304,PRCP,0,P,,E,",
      "XX1,20240304,MDPR,300,,,E,",
      "XX1,20240304,DAPR,3,,,E,",
      "XX1,20240305,PRCP,0,P,,E,",
      "XX1,20240306,PRCP,7,,,E,",
    ].join("\n"),
  );
  expect(days).toEqual([
    ["2024-03-01", 0.5, null],
    ["2024-03-04", null, "accumulated"],
    ["2024-03-05", null, "missing"],
    ["2024-03-06", 0.7, null],
  ]);
  expect(codes).toEqual(["3 accumulated_rain cell_blanked", "5 presumed_zero cell_blanked"]);
});

test("a daily reading on a day that a total covers is not used; the day before the total begins is", async () => {
  const { days, codes } = await read(
    ["XX1,20240228,PRCP,40,,,E,", "XX1,20240229,PRCP,50,,,E,", "XX1,20240302,MDPR,300,,,E,", "XX1,20240302,DAPR,3,,,E,"].join(
      "\n",
    ),
  );
  expect(days).toEqual([
    ["2024-02-28", 4, null],
    ["2024-02-29", null, "missing"],
    ["2024-03-02", null, "accumulated"],
  ]);
  expect(codes).toEqual(["2 accumulated_rain cell_blanked", "3 accumulated_rain cell_blanked"]);
});

test("a total without its number of days is said to be so", async () => {
  const { days, codes } = await read("XX1,20240302,MDPR,300,,,E,");
  expect(days).toEqual([["2024-03-02", null, "accumulated"]]);
  expect(codes).toContain("1 accumulated_days_unknown warning");
});

test("-9999 is missing, a negative or impossible reading too, each with its reason", async () => {
  const { days, codes } = await read(
    [
      "XX1,20240301,PRCP,-9999,,,E,",
      "XX1,20240302,PRCP,-5,,,E,",
      "XX1,20240303,PRCP,18260,,,E,",
      "XX1,20240304,PRCP,18250,,,E,",
    ].join("\n"),
  );
  expect(days).toEqual([
    ["2024-03-01", null, "missing"],
    ["2024-03-02", null, "missing"],
    ["2024-03-03", null, "missing"],
    // The greatest 24-hour rain of the WMO archive, 1,825 mm, is still believed, with a warning.
    ["2024-03-04", 1825, null],
  ]);
  expect(codes).toEqual([
    "1 missing_code cell_blanked",
    "2 out_of_range cell_blanked",
    "3 out_of_range cell_blanked",
    "4 unusual_value warning",
  ]);
});

test("temperatures are tenths of a degree and stand with the rain of their day", async () => {
  const { records, codes } = await read(
    [
      "XX1,20240301,TMAX,85,,,E,",
      "XX1,20240301,PRCP,0,,,E,",
      "XX1,20240301,TMIN,-15,,,E,",
      "XX1,20240302,TMAX,10,,,E,",
      "XX1,20240302,TMIN,20,,,E,",
    ].join("\n"),
  );
  expect(records).toMatchObject([
    { line: 2, rainMm: 0, flag: null, tempMinC: -1.5, tempMaxC: 8.5 },
    { line: 4, rainMm: null, flag: null, tempMinC: null, tempMaxC: null },
  ]);
  expect(codes).toEqual(["5 temperatures_crossed cell_blanked"]);
});

test("other elements are counted and named once; they make no gauge day", async () => {
  const { records, input, issues } = await read(
    ["XX1,20240301,SNOW,0,,,E,", "XX1,20240302,SNOW,0,,,E,", "XX1,20240302,TOBS,71,,I,E,", "XX1,20240303,DAPR,3,,,E,"].join("\n"),
  );
  expect(records).toEqual([]);
  expect(input).toMatchObject({ rowsRead: 4, accepted: 4, setAside: 0 });
  expect(issues.map(({ value, code }) => [value, code])).toEqual([
    ["SNOW", "element_not_used"],
    ["TOBS", "element_not_used"],
  ]);
});

test("a second reading of one station, day and element is set aside with the line of the first", async () => {
  const { days, issues } = await read("XX1,20240301,PRCP,5,,,E,\nXX1,20240301,PRCP,9,,,E,\n");
  expect(days).toEqual([["2024-03-01", 0.5, null]]);
  expect(issues[0]).toMatchObject({ line: 2, code: "duplicate_row", message: expect.stringContaining("line 1") as string });
});

test("two stations keep their names; one gauge for both is refused", async () => {
  const text = "XX1,20240301,PRCP,5,,,E,\nXX2,20240301,PRCP,9,,,E,\n";
  expect((await read(text)).records.map(({ gaugeId, rainMm }) => [gaugeId, rainMm])).toEqual([
    ["XX1", 0.5],
    ["XX2", 0.9],
  ]);
  await expect(read(text, "G1")).rejects.toMatchObject({ code: "several_stations" });
  expect((await read("XX1,20240301,PRCP,5", "G1")).records[0]?.gaugeId).toBe("G1");
});

test("rows of another form are set aside, each with what is wrong", async () => {
  const { records, input, issues } = await read(
    [
      "ID,DATE,ELEMENT,VALUE",
      "XX1,20240230,PRCP,5",
      "XX1,20240301,rain,5",
      "XX1,20240301,PRCP,5.5",
      "XX1,20240301",
      '"XX1,20240301,PRCP,5',
      "XX1,20240301,PRCP,5,,,E,0900,more",
    ].join("\n"),
  );
  expect(records).toEqual([]);
  expect(input).toMatchObject({ rowsRead: 7, accepted: 0, setAside: 7 });
  expect(issues.map(({ line, code }) => [line, code])).toEqual(
    [1, 2, 3, 4, 5, 6, 7].map((line) => [line, line === 6 ? "stray_quote" : "bad_ghcn_row"]),
  );
});

test("an empty file has no rows and says so", async () => {
  expect((await read("")).issues).toMatchObject([{ line: null, code: "no_rows" }]);
});
