import { expect, test } from "vitest";
import { faults, studyFrom } from "../folder.js";

async function read(...rows: readonly string[]) {
  const study = await studyFrom({
    "visits.csv": "visit_date,horse_id,foot\n2025-06-01,Ash,LF\n",
    "weather.csv": ["gauge_id,date,rain_mm,flag,temp_min_c,temp_max_c,humidity_pct", ...rows].join("\n"),
  });
  return {
    weather: study.weather,
    days: study.weather.map(({ rainMm, flag }) => [rainMm, flag]),
    said: faults(study).map((fault) => fault.replace("weather.csv:", "")),
  };
}

test("empty is not zero, and zero is not empty", async () => {
  expect(await read("G,2025-01-01,,,,,", "G,2025-01-02,0,,,,")).toMatchObject({
    days: [
      [null, null],
      [0, null],
    ],
    said: [],
  });
});

test("a trace is 0 with its flag, whatever stands beside it", async () => {
  const { days, said } = await read("G,2025-01-01,,trace,,,", "G,2025-01-02,0,Trace,,,", "G,2025-01-03,0.4,trace,,,");
  expect(days).toEqual([
    [0, "trace"],
    [0, "trace"],
    [0, "trace"],
  ]);
  expect(said).toEqual(["4 rain_mm trace_with_rain cell_blanked"]);
});

test("a total of several days is put on no day", async () => {
  const { days, said } = await read("G,2025-01-03,30,accumulated,,,");
  expect(days).toEqual([[null, "accumulated"]]);
  expect(said).toEqual(["2 rain_mm accumulated_rain cell_blanked"]);
});

test("what is marked missing is missing", async () => {
  const { days, said } = await read("G,2025-01-01,3,missing,,,", "G,2025-01-02,,missing,,,");
  expect(days).toEqual([
    [null, "missing"],
    [null, "missing"],
  ]);
  expect(said).toEqual(["2 rain_mm missing_with_rain cell_blanked"]);
});

test("negative readings and codes for missing are missing, with an issue each", async () => {
  const { days, said } = await read(
    ...["-1", "-99", "-999", "-9999", "-99.9"].map((rain, day) => `G,2025-01-0${String(day + 1)},${rain},,,,`),
  );
  expect(days).toEqual(Array.from({ length: 5 }, () => [null, null]));
  expect(said).toEqual([
    "2 rain_mm out_of_range cell_blanked",
    ...[3, 4, 5, 6].map((line) => `${String(line)} rain_mm missing_code cell_blanked`),
  ]);
});

// WMO archive of weather and climate extremes: greatest 24-hour rain 1,825 mm (Foc-Foc, 7-8 January 1966).
test("the greatest rain ever measured is believed, with a warning, and more is not", async () => {
  const { days, said } = await read("G,2025-01-01,1825,,,,", "G,2025-01-02,1825.1,,,,");
  expect(days).toEqual([
    [1825, null],
    [null, null],
  ]);
  expect(said).toEqual(["2 rain_mm unusual_value warning", "3 rain_mm out_of_range cell_blanked"]);
});

test("one reading per gauge and day", async () => {
  const { weather, said } = await read("G,2025-01-01,1,,,,", "H,2025-01-01,2,,,,", "G,2025-01-01,3,,,,");
  expect(weather.map(({ gaugeId, rainMm }) => [gaugeId, rainMm])).toEqual([
    ["G", 1],
    ["H", 2],
  ]);
  expect(said).toEqual(["4 - duplicate_row set_aside"]);
});

test("temperatures the wrong way round are both left out", async () => {
  const { weather, said } = await read("G,2025-01-01,1,,9,3,", "G,2025-01-02,1,,3,3,90");
  expect(weather).toMatchObject([
    { rainMm: 1, tempMinC: null, tempMaxC: null },
    { tempMinC: 3, tempMaxC: 3, humidityPct: 90 },
  ]);
  expect(said).toEqual(["2 temp_min_c temperatures_crossed cell_blanked"]);
});
