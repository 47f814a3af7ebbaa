import { expect, test } from "vitest";
import { exposureBeforeVisits } from "../../src/derive/exposureBeforeVisits.js";
import { describe as described } from "../../src/estimate/describe.js";
import { studyExposure } from "../../src/answer/studyExposure.js";
import { answered } from "./climateAnswer.js";
import { seasonHerd, steadyRain } from "./seasonHerd.js";

test("quartiles of the visits' rain, how much of it is season, and months by yard", () => {
  const study = seasonHerd();
  const { tables, charts, method } = answered(studyExposure(study));
  const rain = described(exposureBeforeVisits(study).map((row) => row["rainMm14d"] ?? null));
  const line = tables[0]!.rows.find((row) => row["status"] === "declared")!;
  expect([line["q1"], line["median"], line["q3"], line["n"]]).toEqual([rain.q1, rain.median, rain.q3, rain.n]);
  expect(method.n).toBe(rain.n);
  const anomaly = tables[0]!.rows.find((row) => String(row["exposure"]).startsWith("rain of 14 days less"))!;
  // What is usual in the month is taken off, so that less of the rest is season.
  expect(Number(anomaly["season"])).toBeLessThan(Number(line["season"]));
  expect(tables[0]!.rows.find((row) => row["exposure"] === "dewy days of 14")).toMatchObject({ n: 0, median: null });
  expect(charts[0]!.table.rows.reduce((sum, row) => sum + Number(row["n"]), 0)).toBe(study.visits.length);
});

test("where half of the visits or more have one amount, it stands once", () => {
  const [, study] = steadyRain();
  expect(answered(studyExposure(study)).sentence).toMatch(
    /^Half of the \d+ visits, or more, came after 28 mm of rain of 14 days\./,
  );
});

test("no weather, or readings of another time", () => {
  const study = seasonHerd();
  expect(studyExposure({ ...study, weather: [] }).kind).toBe("not_enough_data");
  const old = study.weather.slice(0, 40).map((day) => ({ ...day, gaugeId: "elsewhere" }));
  expect(studyExposure({ ...study, weather: old }).kind).toBe("not_enough_data");
});
