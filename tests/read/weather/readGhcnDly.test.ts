import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { issueLog } from "../../../src/read/report/issueLog.js";
import { firstLines } from "../../../src/read/rules/firstLines.js";
import { readGhcnByStation } from "../../../src/read/weather/readGhcnByStation.js";
import { readGhcnDly } from "../../../src/read/weather/readGhcnDly.js";
import { join } from "node:path";
import { inFolder } from "../folder.js";

interface Named {
  readonly gauge?: string;
  readonly stations?: Readonly<Record<string, string>>;
  readonly limitMm?: number;
}

async function read(text: string, { limitMm, ...named }: Named = {}) {
  return inFolder({ "rain.dly": text }, async (folder) => {
    const log = issueLog();
    const file = { file: "rain.dly", format: "ghcn-dly", ...named } as const;
    const found = await readGhcnDly(join(folder, "rain.dly"), file, firstLines(), log, limitMm ?? null);
    const issues = log.issues(["rain.dly"]);
    return {
      ...found,
      issues,
      days: found.records.map(({ date, rainMm, flag }) => [date, rainMm, flag]),
      codes: issues.map(({ line, column, code, severity }) => `${String(line)} ${String(column)} ${code} ${severity}`),
    };
  });
}

/** A line of one month from its readings, as value and flags by day. */
function line(station: string, month: string, element: string, readings: Readonly<Record<number, string>>): string {
  const cells = Array.from({ length: 31 }, (_, day) => readings[day + 1] ?? "-9999   ");
  return station + month + element + cells.join("");
}

const sample = readFileSync("tests/reference/ghcn-daily/months.dly", "utf8");

// tests/reference/ghcn-daily/months.dly (see the README there): what a reader must make of it by readme.txt section III. Tenths of mm; T is a
// trace, any quality flag excludes, B is an ordinary reading.
test("the synthetic sample, February 2024", async () => {
  const { records, days, input } = await read(sample);
  const february = records.filter(({ date }) => date.startsWith("2024-02"));
  expect(february).toHaveLength(29);
  expect(
    february.every(({ gaugeId, tempMaxC, tempMinC }) => gaugeId === "XX000000001" && tempMaxC === 8.5 && tempMinC === null),
  ).toBe(true);
  const special = [
    "2024-02-01",
    "2024-02-02",
    "2024-02-03",
    "2024-02-04",
    "2024-02-05",
    "2024-02-15",
    "2024-02-16",
    "2024-02-29",
  ];
  expect(days.filter(([date]) => special.includes(String(date)))).toEqual([
    ["2024-02-01", 0, "trace"],
    ["2024-02-02", 12.3, null],
    ["2024-02-03", null, null],
    ["2024-02-04", null, null],
    ["2024-02-05", 0, null],
    ["2024-02-15", 1, null],
    ["2024-02-16", 0.9, null],
    ["2024-02-29", 25.4, null],
  ]);
  const rain = february.flatMap(({ rainMm }) => rainMm ?? []);
  expect(rain).toHaveLength(27);
  expect(rain.reduce((sum, mm) => sum + mm, 0)).toBeCloseTo(39.6, 9);
  const wet = rain.filter((mm) => mm >= 1); // wet day of the ETCCDI indices: 1 mm or more
  expect(wet).toHaveLength(3);
  expect(wet.reduce((sum, mm) => sum + mm, 0)).toBeCloseTo(38.7, 9);
  expect(input).toMatchObject({
    kind: "weather",
    rowsRead: 5,
    accepted: 5,
    setAside: 0,
    sha256: "925184c2044ef56cd2154ce5dceb02237ae9e121b9e1a70edba533ea997169dd",
  });
});

// March 2024: 0.5 mm on the 1st, then a total of 30.0 mm over three days that is written on the 4th, and zeros that are only presumed (M-flag P).
test("the synthetic sample, March 2024: a total is put on no day, a presumed zero is missing", async () => {
  const { days, issues } = await read(sample);
  const march = days.filter(([date]) => String(date).startsWith("2024-03"));
  expect(march.slice(0, 3)).toEqual([
    ["2024-03-01", 0.5, null],
    ["2024-03-04", null, "accumulated"],
    ["2024-03-05", null, "missing"],
  ]);
  expect(march).toHaveLength(29);
  expect(march.slice(2).every(([, rainMm, flag]) => rainMm === null && flag === "missing")).toBe(true);
  const counted = (code: string) => issues.filter((issue) => issue.code === code);
  expect(counted("presumed_zero")).toHaveLength(27);
  expect(counted("quality_flag")).toMatchObject([
    {
      line: 1,
      row: 1,
      column: "PRCP",
      value: "560",
      severity: "cell_blanked",
      message: expect.stringContaining("2024-02-04") as string,
    },
  ]);
  expect(counted("accumulated_rain")).toMatchObject([
    { line: 4, column: "MDPR", message: expect.stringContaining("on 2024-03-04 30 mm is the total of several days") as string },
  ]);
  expect(issues).toHaveLength(29);
});

test("both forms of the file give the same days", async () => {
  const monthly = (await read(sample)).records;
  const daily = await inFolder({ "rain.csv": readFileSync("tests/reference/ghcn-daily/by-station.csv", "utf8") }, (folder) =>
    readGhcnByStation(join(folder, "rain.csv"), { file: "rain.csv", format: "ghcn-by-station" }, firstLines(), issueLog()),
  );
  expect(daily.records).toHaveLength(5);
  for (const { gaugeId, date, rainMm, flag } of daily.records) {
    expect(monthly.find((day) => day.date === date)).toMatchObject({ gaugeId, rainMm, flag });
  }
});

const first = line("XX000000001", "202403", "PRCP", { 1: "    5  E", 2: "   20  E" });
const second = line("XX000000002", "202403", "PRCP", { 1: "    9  E", 3: "  100  E" });

test("several stations keep their names, or get the gauge that study.json gives each", async () => {
  const text = `${first}\n${second}\n`;
  expect((await read(text)).records.map(({ gaugeId, rainMm }) => [gaugeId, rainMm])).toEqual([
    ["XX000000001", 0.5],
    ["XX000000001", 2],
    ["XX000000002", 0.9],
    ["XX000000002", 10],
  ]);
  const named = await read(text, { stations: { XX000000002: "Mill" } });
  expect(named.records.map(({ gaugeId, rainMm }) => [gaugeId, rainMm])).toEqual([
    ["Mill", 0.9],
    ["Mill", 10],
  ]);
  expect(named.input).toMatchObject({ rowsRead: 2, accepted: 2, setAside: 0 });
  expect(named.codes).toEqual(["null null station_not_used warning"]);
  expect(named.issues[0]?.message).toContain("2 readings of a station not named");
  expect([...named.stations]).toEqual([["XX000000002", "Mill"]]);
  await expect(read(text, { gauge: "Mill" })).rejects.toMatchObject({ code: "several_stations" });
});

test("a station that study.json names and the file lacks is said to be missing, with the nearest name", async () => {
  const { records, issues } = await read(first, { stations: { XX000000009: "Mill" } });
  expect(records).toEqual([]);
  expect(issues.map(({ code }) => code).sort()).toEqual(["station_not_used", "station_without_readings"]);
  expect(issues.find(({ code }) => code === "station_without_readings")?.hint).toContain("XX000000001");
});

test("two stations of one gauge: the day that comes second is not used", async () => {
  const { days, codes } = await read(`${first}\n${second}`, { stations: { XX000000001: "Mill", XX000000002: "Mill" } });
  expect(days).toEqual([
    ["2024-03-01", 0.5, null],
    ["2024-03-02", 2, null],
    ["2024-03-03", 10, null],
  ]);
  expect(codes).toEqual(["2 PRCP duplicate_row cell_blanked"]);
});

test("a line out of its columns is set aside with line and field; the others are read", async () => {
  const { days, input, issues, codes } = await read([first.replace("   20  E", "   2o  E"), "", "short", second].join("\r\n"));
  expect(days).toEqual([
    ["2024-03-01", 0.9, null],
    ["2024-03-03", 10, null],
  ]);
  expect(codes).toEqual(["1 VALUE2 bad_ghcn_row set_aside", "3 YEAR bad_ghcn_row set_aside"]);
  expect(issues[0]?.message).toContain('characters 30 to 34 hold "   2o"');
  expect(issues[1]).toMatchObject({ row: 2, value: "short" });
  expect(input).toMatchObject({ rowsRead: 3, accepted: 1, setAside: 2 });
});

test("a line that is no text is set aside", async () => {
  const { codes, input } = await read(`${first}\n\0\0\n${second}`);
  expect(codes).toEqual(["2 null nul_byte set_aside"]);
  expect(input).toMatchObject({ rowsRead: 3, accepted: 2, setAside: 1 });
});

test("a month that comes twice is set aside with the line of the first", async () => {
  const { days, issues } = await read(`${first}\n${first.replace("    5", "   50")}`);
  expect(days[0]).toEqual(["2024-03-01", 0.5, null]);
  expect(issues).toMatchObject([{ line: 2, column: "PRCP", code: "duplicate_row", severity: "set_aside" }]);
  expect(issues[0]?.message).toContain("line 1");
});

test("temperatures in tenths, dew point in tenths, humidity in percent; rows of snow are counted once", async () => {
  const one = (element: string, value: string) => line("XX000000001", "202403", element, { 1: `${value}  E` });
  const { records, codes } = await read(
    [one("TMIN", "  -15"), one("TMAX", "   85"), one("ADPT", "   21"), one("RHAV", "   81"), one("SNOW", "    0")].join("\n"),
  );
  expect(records).toMatchObject([
    { date: "2024-03-01", line: 1, rainMm: null, flag: null, tempMinC: -1.5, tempMaxC: 8.5, dewPointC: 2.1, humidityPct: 81 },
  ]);
  expect(codes).toEqual(["null null element_not_used warning"]);
});

test("a total whose days are not known covers its last day only and says so; a total of -9999 is none", async () => {
  const daily = line("XX000000001", "202403", "PRCP", { 1: "    5  E", 2: "   20  E" });
  const total = line("XX000000001", "202403", "MDPR", { 2: "  300  E" });
  const { days, codes } = await read(`${daily}\n${total}`);
  expect(days).toEqual([
    ["2024-03-01", 0.5, null],
    ["2024-03-02", null, "accumulated"],
  ]);
  expect(codes).toContain("2 MDPR accumulated_days_unknown warning");
  expect((await read(`${daily}\n${line("XX000000001", "202403", "MDPR", {})}`)).days).toEqual((await read(daily)).days);
});

test("a total that reaches back over the end of a month empties the days before it", async () => {
  const february = line("XX000000001", "202402", "PRCP", { 28: "   40  E", 29: "   50  E" });
  const total = line("XX000000001", "202403", "MDPR", { 2: "  300  E" });
  const over = line("XX000000001", "202403", "DAPR", { 2: "    3  E" });
  expect((await read([february, total, over].join("\n"))).days).toEqual([
    ["2024-02-28", 4, null],
    ["2024-02-29", null, "missing"],
    ["2024-03-02", null, "accumulated"],
  ]);
});

test("rain above the limit of the place is kept with a warning", async () => {
  const { days, codes } = await read(second, { limitMm: 9.9 });
  expect(days[1]).toEqual(["2024-03-03", 10, null]);
  expect(codes).toEqual(["1 PRCP rain_over_limit warning"]);
  expect((await read(second, { limitMm: 10 })).codes).toEqual([]);
});

test("an empty file has no rows and says so", async () => {
  expect((await read("\n")).issues).toMatchObject([{ line: null, code: "no_rows" }]);
});
