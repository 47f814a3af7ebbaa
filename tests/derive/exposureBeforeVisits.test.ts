import fc from "fast-check";
import { expect, test } from "vitest";
import { dewDays } from "../../src/derive/dewDays.js";
import { exposureBeforeVisits, type ExposureOptions } from "../../src/derive/exposureBeforeVisits.js";
import { rainBeforeVisits } from "../../src/derive/rainBeforeVisits.js";
import { dateOfDay } from "../../src/study/dateOfDay.js";
import { dayNumber } from "../../src/study/dayNumber.js";
import { defaultSettings } from "../../src/study/defaultSettings.js";
import type { GaugeDay } from "../../src/study/GaugeDay.js";
import type { Settings } from "../../src/study/Settings.js";
import type { Study } from "../../src/study/Study.js";
import { footVisit } from "../footVisit.js";
import { gaugeDay, horseStay, studyOf, yard } from "../study.js";
import { seattleRain } from "./seattleRain.js";
import { referenceRain, weatherReferences } from "./weatherReferences.js";

const seattle = seattleRain();
const studyWith = (weather: readonly GaugeDay[], visitDates: readonly string[], settings: Partial<Settings> = {}): Study =>
  studyOf({
    settings: { ...defaultSettings, ...settings },
    visits: visitDates.flatMap((visitDate) => [footVisit({ visitDate }), footVisit({ visitDate, foot: "RH" })]),
    horses: [horseStay({ horseId: "A", yardId: "Y" })],
    yards: [yard({ yardId: "Y", gaugeId: weather[0]?.gaugeId ?? "G", gaugeKm: 4.2 })],
    weather,
  });

// 146.0, 194.3 and 325.7 mm are the greatest totals of 7, 14 and 30 days in Seattle (independent Python sum in integer tenths); the index values are
// those of antecedentPrecipitation.test.ts, where each decay starts at 0 four years earlier.
test("Seattle: rain, index, gauge and distance of a visit of several feet", () => {
  const rows = exposureBeforeVisits(studyWith(seattle, ["2015-11-17", "2015-12-18", "2015-12-12"]), { windowsDays: [7, 14, 30] });
  expect(rows.map(({ visitDate }) => visitDate)).toEqual(["2015-11-17", "2015-12-12", "2015-12-18"]);
  const [november, december, week] = rows;
  expect(november).toMatchObject({
    horseId: "A",
    yardId: "Y",
    gaugeId: "Seattle",
    gaugeKm: 4.2,
    lastRainDay: "2015-11-17",
    linkage: "matched",
  });
  expect([november?.["rainMm7d"], week?.["rainMm14d"], december?.["rainMm30d"]]).toEqual([146, 194.3, 325.7]);
  expect(november?.["apiMm90pct"]).toBeCloseTo(138.503406, 6);
});

test("every index is warmed up alike: as much of what was before is left as the settings leave", () => {
  const days = Array.from({ length: 500 }, (_, place) => gaugeDay({ gaugeId: "G", date: dateOfDay(20_000 + place), rainMm: 1 }));
  const dates = days.map(({ date }) => date);
  const rows = exposureBeforeVisits(studyWith(days, dates), { decays: [0.8, 0.9, 0.925, 0.98], windowsDays: [] });
  const from = (name: "apiMm80pct" | "apiMm90pct" | "apiMm92.5pct" | "apiMm98pct") =>
    rows.findIndex((row) => row[name] !== null) + 1;
  // 0.9 over 60 days leaves 0.18 %; ln 0.0018 / ln k days leave as little: 28.3, 60, 81.1 and 312.9.
  expect([from("apiMm80pct"), from("apiMm90pct"), from("apiMm92.5pct"), from("apiMm98pct")]).toEqual([29, 60, 82, 313]);
  expect(rows[59]?.missing["apiMm98pct"]).toEqual({ code: "warm_up", text: "60 unbroken days of readings, 313 are needed" });
});

test("wet days have the least rain that is said, 1 mm unless told otherwise", () => {
  const rain = [0.9, 1, 5, 0, 4.9, 30];
  const days = rain.map((rainMm, place) => gaugeDay({ gaugeId: "G", date: dateOfDay(20_000 + place), rainMm }));
  const wet = (options: ExposureOptions) =>
    exposureBeforeVisits(studyWith(days, [dateOfDay(20_005)]), { windowsDays: [6], ...options })[0]?.["wetDays6d"];
  expect([wet({}), wet({ wetDayMm: 5 }), wet({ wetDayMm: 0.9 })]).toEqual([4, 2, 5]);
});

// The usual rain is held to R in rainNormals.test.ts; here to the record it is taken from.
test("the departure is rain less the usual rain of the month in which the window ends", () => {
  const record = referenceRain();
  const dates = ["2022-01-10", "2022-01-31", "2022-02-01"];
  const rows = exposureBeforeVisits(studyWith(record, dates), { windowsDays: [7] });
  const normal = weatherReferences("normal7/mm");
  rows.forEach((row, place) => {
    expect(row["rainAnomalyMm7d"]).toBeCloseTo(row["rainMm7d"]! - normal.get(place < 2 ? "1" : "2")!, 9);
    expect(row["normalYears7d"]).toBe(5);
  });
});

test("over a whole record the departures of a month add up to nothing", () => {
  const dates = seattle.filter(({ date }) => date.slice(5, 7) === "06").map(({ date }) => date);
  const rows = exposureBeforeVisits(studyWith(seattle, dates), { windowsDays: [14] });
  expect(rows).toHaveLength(120);
  expect(rows.reduce((sum, row) => sum + row["rainAnomalyMm14d"]!, 0)).toBeCloseTo(0, 8);
});

test("a record of 14 months has no usual rain of a month that comes once", () => {
  const days = Array.from({ length: 426 }, (_, place) =>
    gaugeDay({ gaugeId: "G", date: dateOfDay(dayNumber("2024-01-01")! + place), rainMm: 1 }),
  );
  const [april, january] = exposureBeforeVisits(studyWith(days, ["2024-04-20", "2025-01-20"]), { windowsDays: [7] });
  expect(april?.["rainAnomalyMm7d"]).toBeNull();
  expect(april?.missing["rainAnomalyMm7d"]).toEqual({
    code: "short_record",
    text: "that month is known in 1 year, 2 are needed",
  });
  expect([april?.["rainMm7d"], april?.["normalYears7d"], april?.linkage]).toEqual([7, 1, "matched"]);
  expect([january?.["rainAnomalyMm7d"], january?.["normalYears7d"]]).toEqual([0, 2]);
  const [one] = exposureBeforeVisits(studyWith(days, ["2024-04-20"]), { windowsDays: [7], minimumNormalYears: 1 });
  expect(one?.["rainAnomalyMm7d"]).toBe(0);
});

test("soil and dew of the window, with the latitude of the gauge from the study or from the options", () => {
  const record = referenceRain().map((day) => ({ ...day, dewPointC: (day.tempMinC ?? 0) - (Number(day.date.slice(8)) % 2) }));
  const study = studyWith(record, ["2022-01-31"]);
  const options = { windowsDays: [28], decays: [0.9] };
  const gauges = [{ gaugeId: "R", latitudeDeg: 53.2, longitudeDeg: null, elevationM: null }];
  const [row] = exposureBeforeVisits({ ...study, gauges }, { ...options, soilCapacityMm: 75 });
  // Every even day is dewy: 4, 6, ... 30 of the days 4 to 31.
  expect(row?.["dewDays28d"]).toBe(14);
  expect(dewDays(record).filter(({ date, dew }) => date >= "2022-01-04" && date <= "2022-01-31" && dew)).toHaveLength(14);
  expect(row?.soilStorageMm).toBeGreaterThan(0);
  expect(row?.soilStorageMm).toBeLessThanOrEqual(75);
  expect(row?.["surplusDays28d"]).toBeGreaterThan(0);
  expect(row?.linkage).toBe("matched");
  expect(row?.missing).toEqual({});
  const byOption = exposureBeforeVisits(study, { ...options, soilCapacityMm: 75, latitudeDeg: { R: 53.2 } });
  expect(byOption).toEqual([row]);
  const [nowhere] = exposureBeforeVisits(study, { windowsDays: [28] });
  expect([nowhere?.soilStorageMm, nowhere?.["surplusDays28d"], nowhere?.linkage]).toEqual([null, null, "matched"]);
  expect(nowhere?.missing.soilStorageMm?.code).toBe("no_latitude");
  expect(nowhere?.missing["surplusDays28d"]?.code).toBe("no_latitude");
});

// tests/reference/weather/references.R, water balance from a start of 40 of 75 mm: by January it no longer matters.
test("the water in the soil is that of the last admissible day", () => {
  const storage = weatherReferences("storage");
  const study = studyWith(referenceRain(), ["2020-01-30", "2020-02-29"]);
  const rows = exposureBeforeVisits(study, { windowsDays: [3], soilCapacityMm: 75, latitudeDeg: { R: 53.2 } });
  for (const { visitDate, soilStorageMm } of rows) expect(soilStorageMm).toBeCloseTo(storage.get(visitDate)!, 2);
});

test("temperatures that are missing cost the soil and the dew, not the rain", () => {
  const record = referenceRain().map((day) =>
    day.date === "2022-01-20" ? { ...day, tempMaxC: null, tempMinC: null } : { ...day, dewPointC: 1 },
  );
  const [row, later] = exposureBeforeVisits(studyWith(record, ["2022-01-20", "2022-01-27"]), {
    windowsDays: [7],
    latitudeDeg: { R: 53 },
  });
  expect([row?.["rainMm7d"] === null, row?.["dewDays7d"], row?.soilStorageMm, row?.["surplusDays7d"]]).toEqual([
    false,
    null,
    null,
    null,
  ]);
  expect(row?.missing.soilStorageMm?.code).toBe("soil_unknown");
  expect(row?.missing["dewDays7d"]?.code).toBe("no_dew_point");
  expect(later?.["dewDays7d"]).not.toBeNull();
});

test("how a visit is linked, and why a column is missing", () => {
  const days = [1, 1, 1, null, 1, 1, 1, 1, 1, 1].map((rainMm, place) =>
    gaugeDay({ gaugeId: "G", date: `2025-01-${String(place + 1).padStart(2, "0")}`, rainMm }),
  );
  const study = studyOf({
    visits: ["2024-12-31", "2025-01-03", "2025-01-05", "2025-01-10", "2025-01-11"]
      .map((visitDate) => footVisit({ visitDate }))
      .concat(["Far", "Bare", "Lone"].map((horseId) => footVisit({ horseId, visitDate: "2025-01-03" }))),
    horses: [
      horseStay({ horseId: "A", yardId: "Y" }),
      horseStay({ horseId: "Far", yardId: "Far" }),
      horseStay({ horseId: "Bare", yardId: "Bare" }),
    ],
    yards: [yard({ yardId: "Y", gaugeId: "G" }), yard({ yardId: "Far", gaugeId: "H", gaugeKm: 30 }), yard({ yardId: "Bare" })],
    weather: days,
  });
  const rows = exposureBeforeVisits(study, { windowsDays: [3], decays: [0.9] });
  expect(
    rows.map(({ horseId, visitDate, linkage, missing, ...row }) => [
      horseId,
      visitDate,
      linkage,
      missing["rainMm3d"]?.code,
      row["rainMm3d"],
    ]),
  ).toEqual([
    ["A", "2024-12-31", "outside_readings", "outside_readings", null],
    ["A", "2025-01-03", "matched", undefined, 3],
    ["Bare", "2025-01-03", "no_gauge", "no_gauge", null],
    ["Far", "2025-01-03", "no_gauge", "no_readings", null],
    ["Lone", "2025-01-03", "no_gauge", "no_stay", null],
    ["A", "2025-01-05", "missing", "days_missing", null],
    ["A", "2025-01-10", "matched", undefined, 3],
    ["A", "2025-01-11", "outside_readings", "outside_readings", null],
  ]);
  expect(rows.find(({ horseId }) => horseId === "Far")).toMatchObject({ gaugeId: "H", gaugeKm: 30 });
  // Every row has the same columns in the same order, and every null its reason.
  const columns = Object.keys(rows[0]!);
  for (const row of rows) {
    expect(Object.keys(row)).toEqual(columns);
    const measures = columns.slice(columns.indexOf("linkage") + 1, -1);
    expect(Object.keys(row.missing).sort()).toEqual(
      measures.filter((name) => Object.entries(row).some(([key, value]) => key === name && value === null)).sort(),
    );
  }
});

test("the rain and the index are those of rainBeforeVisits, whatever the hour of the gauge; nothing from after a visit counts", () => {
  for (const rule of ["ends_on_date", "starts_on_date", "calendar_day"] as const) {
    const dates = ["2015-12-18", "2015-02-11", "2013-07-07", "2012-01-20"];
    const study = studyWith(seattle, dates, { gaugeDay: rule });
    const options = { windowsDays: [7, 14, 28], decays: [0.9] };
    const rows = exposureBeforeVisits(study, options);
    rainBeforeVisits(study).forEach((rain, place) => {
      const row = rows[place]!;
      expect([row.lastRainDay, row["rainMm7d"], row["rainMm14d"], row["rainMm28d"], row["apiMm90pct"]]).toEqual([
        rain.lastRainDay,
        rain["rainMm7d"],
        rain["rainMm14d"],
        rain["rainMm28d"],
        rain.apiMm,
      ]);
    });
    const last = rule === "ends_on_date" ? "2015-12-18" : "2015-12-17";
    const flood = study.weather.map((day) => (day.date > last ? { ...day, rainMm: 300 } : day));
    const flooded = exposureBeforeVisits({ ...study, weather: flood }, options).at(-1)!;
    // Only the usual rain, which is taken from the whole record, may know of it.
    expect(flooded).toMatchObject({
      rainMm28d: rows.at(-1)!["rainMm28d"],
      wetDays28d: rows.at(-1)!["wetDays28d"],
      apiMm90pct: rows.at(-1)!["apiMm90pct"],
    });
  }
});

test("longer windows hold the shorter ones; order and labels do not matter", () => {
  const tenths = fc.array(fc.option(fc.integer({ min: 0, max: 300 }), { nil: null, freq: 30 }), { minLength: 40, maxLength: 90 });
  fc.assert(
    fc.property(tenths, (values) => {
      const days = values.map((value, place) =>
        gaugeDay({
          gaugeId: "G",
          date: dateOfDay(20_000 + place),
          rainMm: value === null ? null : value / 10,
          tempMinC: 4,
          tempMaxC: 12,
          dewPointC: place % 5,
        }),
      );
      const study = studyWith(
        days,
        days.map(({ date }) => date),
      );
      const options = { windowsDays: [3, 7, 14], latitudeDeg: { G: 53 } };
      const rows = exposureBeforeVisits(study, options);
      for (const row of rows) {
        for (const kind of ["rainMm", "wetDays", "dewDays", "surplusDays"] as const) {
          const [short, middle, long] = [row[`${kind}3d`] ?? null, row[`${kind}7d`] ?? null, row[`${kind}14d`] ?? null];
          if (long !== null) expect([short, middle].every((value) => value !== null && value <= long)).toBe(true);
          if (middle !== null) expect(short).toBeLessThanOrEqual(middle);
        }
      }
      const turned = { ...study, weather: [...study.weather].reverse(), visits: [...study.visits].reverse() };
      expect(exposureBeforeVisits(turned, options)).toEqual(rows);
    }),
    { numRuns: 25 },
  );
});

test("choices that make no sense are refused", () => {
  const odd = (options: ExposureOptions) => () => exposureBeforeVisits(studyWith(seattle.slice(0, 9), ["2012-01-09"]), options);
  expect(odd({ windowsDays: [7, 0] })).toThrow("Windows");
  expect(odd({ decays: [1] })).toThrow("Decays");
  expect(odd({ wetDayMm: 0 })).toThrow("Wet days");
  expect(odd({ minimumNormalYears: 0 })).toThrow("years");
  expect(odd({ soilCapacityMm: 0, latitudeDeg: { Seattle: 47 } })).toThrow("soil");
  expect(odd({ latitudeDeg: { Seattle: 147 } })).toThrow("latitude");
});
