import { expect, test } from "vitest";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";
import { lagProfile } from "../../src/estimate/lagProfile.js";
import { climateReference } from "./climateReference.js";
import { faultCode } from "./faultCode.js";
import { expectNear, referenceRows } from "./reference.js";

const rows = referenceRows("climate/lagged.csv").map((row) => ({
  ...row,
  rain: Array.from({ length: 10 }, (_, day) => Number(row[`day${day}`])),
}));
const model = { rows, outcome: "case", byDay: "rain", groups: ["yard"], method: "gee", knots: [2, 5] } as const;

// R 4.2.2: geepack 1.3.9 geeglm on the columns of splines::ns of the lag, factor G/(G-p).
test("log odds of each day, their errors and the tests", () => {
  const found = lagProfile({ ...model, random: seededRandom(1) });
  expectNear(
    found.days.map(({ estimate }) => Math.log(estimate)),
    climateReference("lags", "log odds"),
    1e-5,
  );
  // t with 24 - 5 degrees of freedom: 2.093024 (R qt).
  const ses = found.days.map(({ lower, upper }) => Math.log(upper / lower) / 2 / 2.09302405440831);
  expectNear(ses, climateReference("lags", "se"), 1e-5);
  expectNear([found.anyDay.statistic], climateReference("lags", "any day F"), 1e-4);
  const [total, se] = climateReference("lags", "every day") as [number, number];
  expectNear(
    [Math.log(found.everyDay.estimate), Math.log(found.everyDay.upper / found.everyDay.estimate)],
    [total, se * 2.09302405440831],
    1e-5,
  );
  expect([found.n, found.clusters, found.days.at(-1)!.lagDays]).toEqual([480, 24, 9]);
});

test("the band of the whole curve lies outside that of each day", () => {
  const { days } = lagProfile({ ...model, random: seededRandom(1) });
  for (const { lower, upper, lowerTogether, upperTogether } of days)
    expect(lowerTogether < lower && upper < upperTogether).toBe(true);
});

test("per 10 units and rows with a day missing", () => {
  const [one, ten] = [1, 10].map((per) => lagProfile({ ...model, per, random: seededRandom(1) }));
  expectNear(
    ten!.days.map(({ estimate }) => Math.log(estimate)),
    one!.days.map(({ estimate }) => 10 * Math.log(estimate)),
    1e-6,
  );
  const holes = rows.map((row, place) => (place < 3 ? { ...row, rain: [null, ...row.rain.slice(1)] } : row));
  expect(lagProfile({ ...model, rows: holes, random: seededRandom(1) }).missing).toBe(3);
});

test("lists of different length, or none, are refused", () => {
  const ask = (rain: unknown) =>
    faultCode(() => lagProfile({ ...model, rows: [...rows, { ...rows[0]!, rain }], random: seededRandom(1) }));
  expect(ask([1, 2, 3])).toBe("length_mismatch");
  expect(faultCode(() => lagProfile({ ...model, byDay: "dew", random: seededRandom(1) }))).toBe("empty");
});
