import { describe, expect, test } from "vitest";
import { afterHeavyRain } from "../../src/answer/afterHeavyRain.js";
import { studyOf } from "../study.js";
import { answered } from "./climateAnswer.js";
import { poorStudies, seasonHerd } from "./seasonHerd.js";

// The rain of the 14 days up to a visit counts, one day as much as another, by exp(0.6) per 10 mm.
const truth = { intercept: -3, rainPer10Mm14d: 0.6, seasonAmplitude: 0.5, hind: 0.4, yardSd: 0.3, horseSd: 0.4 };
const strong = seasonHerd({ truth, yards: 16, horsesPerYard: 4, visitGapDays: 60 });

test("days of the planted fortnight stand out, none long before it", { timeout: 60_000 }, () => {
  const { sentence, charts, tables, method } = answered(afterHeavyRain(strong));
  expect(sentence).toMatch(/^Exploratory: with season held equal thrush was found more /);
  const days = charts[0]!.table.rows;
  const standing = days.filter((row) => Number(row["lowerTogether"]) > 1).map((row) => Number(row["place"]));
  expect(standing.length).toBeGreaterThan(7);
  // The curve is smooth, so that it falls over some days about the fourteenth and not at once.
  expect(Math.max(...standing)).toBeLessThan(19);
  // On a day within the fortnight the planted odds ratio lies within the limits of the curve.
  const sixth = days.find((row) => row["place"] === 6)!;
  expect(Number(sixth["lowerTogether"]) < Math.exp(0.6) && Math.exp(0.6) < Number(sixth["upperTogether"])).toBe(true);
  expect(tables[0]!.rows.map((row) => row["exposure"])).toEqual([
    ...["rain of 7 days (mm)", "rain of 14 days (mm)", "rain of 28 days (mm)", "rain of 42 days (mm)"],
    "antecedent precipitation index, 90% kept a day (mm)",
  ]);
  expect(method.n + method.missing).toBe(strong.visits.length);
});

test("without an effect it says that it cannot tell", { timeout: 60_000 }, () => {
  const none = seasonHerd({ truth: { ...truth, intercept: -1.5, rainPer10Mm14d: 0 } });
  const { sentence, charts } = answered(afterHeavyRain(none));
  expect(sentence).toMatch(/^Exploratory: cannot tell\. .*\(p 0\.\d{3}\)\. From \d+ feet at visits\.$/);
  expect(charts[0]!.title).toBe("No day after rain stands out");
});

describe.each(poorStudies())("%s", (_, study, reason) => {
  test("says why there is no answer", () => {
    const reply = afterHeavyRain(study);
    expect(reply.kind === "not_enough_data" && reason.test(reply.reason)).toBe(true);
  });
});

test("nothing recorded, or rain of too few days to look back on", () => {
  expect(afterHeavyRain(studyOf()).kind).toBe("not_enough_data");
  // Every second visit has its fortnight of rain, none its 42 days.
  const gaps = strong.weather.map((day) => ({ ...day, rainMm: Number(day.date.slice(8)) === 15 ? null : day.rainMm }));
  const reply = afterHeavyRain({ ...strong, weather: gaps });
  expect(reply.kind === "not_enough_data" && reply.reason).toMatch(/^The days before a visit cannot be told apart\. /);
});
