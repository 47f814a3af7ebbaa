import { expect, test } from "vitest";
import { ratioProfileChart } from "../../src/chart/ratioProfileChart.js";
import { profile, profileOptions } from "./climateCharts.js";

test("the highest place is read with both of its intervals; the table holds both bands", () => {
  const { reading, table } = ratioProfileChart(profile, profileOptions);
  expect(reading).toBe("Highest at 3: 1.15 (95% interval of the place 0.90 to 1.30, of the whole curve 0.80 to 1.45).");
  expect(table.rows).toEqual(profile);
});
