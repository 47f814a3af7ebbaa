import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import { fitLogistic } from "../../src/estimate/fitLogistic.js";
import { simulateSeasonStudy } from "../../src/simulate/simulateSeasonStudy.js";
import { grouped } from "../../src/study/grouped.js";
import { faultCode } from "../estimate/faultCode.js";
import { root } from "../repository/trackedFiles.js";
import { seasonDesign } from "./seasonDesign.js";

test("the same seed gives the same rows, another seed others; another truth leaves weather, calendar and horses", () => {
  const study = simulateSeasonStudy(seasonDesign, 1);
  expect(simulateSeasonStudy(seasonDesign, 1)).toEqual(study);
  expect(simulateSeasonStudy(seasonDesign, 2).rows).not.toEqual(study.rows);
  const calm = simulateSeasonStudy({ ...seasonDesign, truth: { ...seasonDesign.truth, rainPer10Mm14d: 0 } }, 1);
  expect(calm.weather).toEqual(study.weather);
  const place = (row: (typeof study.rows)[number]) => [row.yardId, row.horseId, row.visitDate, row.rainMm14d, row.darkHorn];
  expect(calm.rows.map(place)).toEqual(study.rows.map(place));
});

test("rain of the window is the sum of its days, and winter is wetter", () => {
  const { rows } = simulateSeasonStudy(seasonDesign, 1);
  for (const { rainMm14d, rainMmByDay } of rows.slice(0, 400)) {
    expect(rainMm14d).toBeCloseTo(
      rainMmByDay.slice(0, 14).reduce((sum, value) => sum + value, 0),
      9,
    );
    expect(rainMmByDay).toHaveLength(42);
  }
  const meanOf = (months: readonly number[]) => {
    const chosen = rows.filter(({ monthOfYear }) => months.includes(monthOfYear)).map(({ rainMm14d }) => rainMm14d);
    return chosen.reduce((sum, value) => sum + value, 0) / chosen.length;
  };
  expect(meanOf([12, 1, 2])).toBeGreaterThan(1.3 * meanOf([6, 7, 8]));
});

test("without spread between yards and horses the planted numbers are found by logistic regression", () => {
  const truth = { ...seasonDesign.truth, yardSd: 0, horseSd: 0 };
  const { rows } = simulateSeasonStudy({ ...seasonDesign, yards: 60, truth }, 5);
  const fit = fitLogistic({
    rows,
    outcome: "thrush",
    terms: [{ column: "rainMm14d", per: 10 }, { season: "visitDate" }, "hind"],
    interval: "wald",
    level: 0.999,
  });
  const found = (name: string) => fit.coefficients.find((one) => one.name.startsWith(name))!;
  for (const [name, planted] of [
    ["rainMm14d", 0.15],
    ["hind", 0.4],
  ] as const) {
    expect(found(name).lower < planted && planted < found(name).upper, name).toBe(true);
    expect(found(name).upper - found(name).lower).toBeLessThan(0.4);
  }
});

test("weather that is given is used as it is: the Seattle record of vega-datasets 3.2.1", () => {
  const text = readFileSync(join(root, "node_modules/vega-datasets/data/seattle-weather.csv"), "utf8");
  const weather = parse<{ date: string; precipitation: string }>(text, { columns: true }).map(({ date, precipitation }) => ({
    gaugeId: "Seattle",
    date: date.replaceAll("/", "-"),
    rainMm: Number(precipitation),
  }));
  const design = { ...seasonDesign, weather, from: "2012-03-01", to: "2015-12-31", visitGapDays: 1 };
  const { rows } = simulateSeasonStudy({ ...design, yards: 1, horsesPerYard: 1 }, 1);
  // 14 days up to 18 December 2015: 194.3 mm, the most of the record (R 4.2.2, stats::filter).
  expect(Math.max(...rows.map(({ rainMm14d }) => rainMm14d))).toBe(194.3);
  expect(rows.find(({ rainMm14d }) => rainMm14d === 194.3)!.visitDate).toBe("2015-12-18");
  expect(faultCode(() => simulateSeasonStudy({ ...design, from: "2012-01-05" }, 1))).toBe("too_few");
});

test("a share of feet is not seen, and is null", () => {
  const { rows } = simulateSeasonStudy({ ...seasonDesign, unseenShare: 0.2 }, 1);
  const unseen = rows.filter(({ thrush }) => thrush === null).length / rows.length;
  // Standard error 0.005 for some 8,000 feet.
  expect(Math.abs(unseen - 0.2)).toBeLessThan(0.02);
});

test("feet of a yard are alike only with a spread between yards", () => {
  const spread = (yardSd: number) => {
    const { rows } = simulateSeasonStudy({ ...seasonDesign, truth: { ...seasonDesign.truth, yardSd, horseSd: 0 } }, 9);
    const shares = [...grouped(rows, ({ yardId }) => yardId).values()].map(
      (feet) => feet.filter(({ thrush }) => thrush).length / feet.length,
    );
    return Math.max(...shares) - Math.min(...shares);
  };
  expect(spread(1)).toBeGreaterThan(2 * spread(0));
});

test("designs that make no sense are refused", () => {
  expect(faultCode(() => simulateSeasonStudy({ ...seasonDesign, yards: 0 }, 1))).toBe("out_of_range");
  expect(faultCode(() => simulateSeasonStudy({ ...seasonDesign, from: "10.1.2023" }, 1))).toBe("not_a_date");
});
