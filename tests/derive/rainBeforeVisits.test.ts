import { expect, test } from "vitest";
import { rainBeforeVisits } from "../../src/derive/rainBeforeVisits.js";
import { dateOfDay } from "../../src/study/dateOfDay.js";
import { dayNumber } from "../../src/study/dayNumber.js";
import { defaultSettings } from "../../src/study/defaultSettings.js";
import type { Settings } from "../../src/study/Settings.js";
import { footVisit } from "../footVisit.js";
import { gaugeDay, horseStay, studyOf, yard } from "../study.js";
import { seattleRain } from "./seattleRain.js";

const seattleDays = seattleRain();

const seattle = (settings: Partial<Settings> = {}, visitDate = "2015-12-18") =>
  studyOf({
    settings: { ...defaultSettings, ...settings },
    visits: [footVisit({ visitDate }), footVisit({ visitDate, foot: "RH" })],
    horses: [horseStay({ horseId: "A", yardId: "Y" })],
    yards: [yard({ yardId: "Y", gaugeId: "Seattle" })],
    weather: seattleDays,
  });

// 194.3 mm is the 14-day total that ends on 2015-12-18, index values as in antecedentPrecipitation.test.ts.
test("Seattle: one row for a visit of several feet, ending on the last admissible reading", () => {
  const rows = rainBeforeVisits(seattle());
  expect(rows).toHaveLength(1);
  expect(rows[0]).toMatchObject({ yardId: "Y", gaugeId: "Seattle", lastRainDay: "2015-12-18", rainMm14d: 194.3, missing: {} });
});

test("thrown-back and calendar-day readings end a day earlier", () => {
  for (const gaugeDay of ["starts_on_date", "calendar_day"] as const) {
    const [row] = rainBeforeVisits(seattle({ gaugeDay }, "2015-12-19"));
    expect(row).toMatchObject({ lastRainDay: "2015-12-18", rainMm14d: 194.3 });
  }
});

test("the index is that of the last admissible day", () => {
  const [row] = rainBeforeVisits(seattle({ gaugeDay: "calendar_day" }, "2015-11-18"));
  expect(row!.apiMm).toBeCloseTo(138.503406, 6);
});

test("no rain from after the day of the visit began changes a row", () => {
  for (const rule of ["ends_on_date", "starts_on_date", "calendar_day"] as const) {
    const study = seattle({ gaugeDay: rule });
    const firstAfter = rule === "ends_on_date" ? "2015-12-19" : "2015-12-18";
    const flood = study.weather.map((day) => (day.date >= firstAfter ? { ...day, rainMm: 500 } : day));
    expect(rainBeforeVisits({ ...study, weather: flood })).toEqual(rainBeforeVisits(study));
    const before = study.weather.map((day) =>
      day.date >= dateOfDay(dayNumber(firstAfter)! - 1) ? { ...day, rainMm: 500 } : day,
    );
    expect(rainBeforeVisits({ ...study, weather: before })).not.toEqual(rainBeforeVisits(study));
  }
});

test("a column for each window of the settings", () => {
  const [row] = rainBeforeVisits(seattle({ rainWindowsDays: [30, 3] }, "2015-12-12"));
  expect(row!["rainMm30d"]).toBe(325.7);
  expect(Object.keys(row!).filter((name) => name.startsWith("rainMm"))).toEqual(["rainMm30d", "rainMm3d"]);
});

test("a horse that moves yard has the rain of the yard where it stood", () => {
  const days = (gaugeId: string, rainMm: number) =>
    Array.from({ length: 40 }, (_, place) => gaugeDay({ gaugeId, date: dateOfDay(dayNumber("2025-05-01")! + place), rainMm }));
  const rows = rainBeforeVisits(
    studyOf({
      settings: { ...defaultSettings, rainWindowsDays: [7] },
      visits: [footVisit({ visitDate: "2025-06-02" }), footVisit({ visitDate: "2025-05-30" })],
      horses: [
        horseStay({ horseId: "A", yardId: "Low", leftOn: "2025-05-31" }),
        horseStay({ horseId: "A", yardId: "High", joinedOn: "2025-06-01" }),
      ],
      yards: [yard({ yardId: "Low", gaugeId: "L" }), yard({ yardId: "High", gaugeId: "H" })],
      weather: [...days("L", 1), ...days("H", 2)],
    }),
  );
  expect(rows.map((row) => [row.visitDate, row.yardId, row["rainMm7d"]])).toEqual([
    ["2025-05-30", "Low", 7],
    ["2025-06-02", "High", 14],
  ]);
});

test("every null has its reason", () => {
  const weather = [1, 1, null, 1, 1, 1, 1, 1, 1, 1, 1, 1].map((rainMm, place) =>
    gaugeDay({ gaugeId: "G", date: dateOfDay(dayNumber("2025-01-01")! + place), rainMm }),
  );
  const accumulated = weather.map((day) => ({
    ...day,
    gaugeId: "Acc",
    ...(day.date === "2025-01-04" ? { flag: "accumulated" as const } : {}),
  }));
  const horses = ["no yard", "unknown yard", "no gauge", "no readings", "G", "Acc"].map((horseId) =>
    horseStay({ horseId, yardId: horseId === "no yard" ? null : horseId, leftOn: "2025-06-30" }),
  );
  const yards = ["no gauge", "no readings", "G", "Acc"].map((yardId) =>
    yard({ yardId, gaugeId: yardId === "no gauge" ? null : yardId }),
  );
  const settings = { ...defaultSettings, rainWindowsDays: [7], apiWarmUpDays: 5 };
  const on = (horseId: string, visitDate: string) => {
    const study = studyOf({
      settings,
      horses,
      yards,
      weather: [...weather, ...accumulated],
      visits: [footVisit({ horseId, visitDate })],
    });
    const [row] = rainBeforeVisits(study);
    const { rainMm7d, apiMm } = { rainMm7d: row!["rainMm7d"], apiMm: row!.apiMm };
    expect([rainMm7d === null, apiMm === null]).toEqual([
      row!.missing["rainMm7d"] !== undefined,
      row!.missing.apiMm !== undefined,
    ]);
    return [row!.missing["rainMm7d"]?.code, row!.missing.apiMm?.code, row!.missing["rainMm7d"]?.text];
  };
  expect(on("nobody", "2025-01-10")).toEqual(["no_stay", "no_stay", "no stay of the horse covers 2025-01-10"]);
  expect(on("G", "2025-07-01")).toEqual(["no_stay", "no_stay", "no stay of the horse covers 2025-07-01"]);
  expect(on("no yard", "2025-01-10")).toEqual(["no_yard", "no_yard", "the yard of the horse is not known"]);
  expect(on("unknown yard", "2025-01-10")).toEqual(["no_yard", "no_yard", "yard unknown yard is not described"]);
  expect(on("no gauge", "2025-01-10")).toEqual(["no_gauge", "no_gauge", "yard no gauge has no gauge"]);
  expect(on("no readings", "2025-01-10")).toEqual(["no_readings", "no_readings", "gauge no readings has no readings"]);
  expect(on("G", "2025-01-13")).toEqual([
    "outside_readings",
    "outside_readings",
    "the readings of gauge G run from 2025-01-01 to 2025-01-12",
  ]);
  expect(on("G", "2025-01-07")).toEqual(["days_missing", "warm_up", "1 of 7 days have no reading"]);
  expect(on("G", "2025-01-05")).toEqual(["days_missing", "warm_up", "3 of 7 days have no reading"]);
  expect(on("Acc", "2025-01-10")).toEqual(["accumulated", undefined, "a total of several days lies in the 7 days"]);
  expect(on("G", "2025-01-12")).toEqual([undefined, undefined, undefined]);
});

test("rows come by day and horse, whatever the order of the input", () => {
  const study = {
    ...seattle(),
    visits: [
      footVisit({ visitDate: "2014-05-02", horseId: "B" }),
      footVisit({ visitDate: "2014-05-02" }),
      footVisit({ visitDate: "2013-01-05" }),
    ],
  };
  const rows = rainBeforeVisits(study);
  expect(rows.map((row) => `${row.visitDate} ${row.horseId}`)).toEqual(["2013-01-05 A", "2014-05-02 A", "2014-05-02 B"]);
  const turned = { ...study, visits: [...study.visits].reverse(), weather: [...study.weather].reverse() };
  expect(rainBeforeVisits(turned)).toEqual(rows);
});
