import { describe, expect, test } from "vitest";
import { rainLagAndShape } from "../../src/answer/rainLagAndShape.js";
import { answered } from "./climateAnswer.js";
import { poorStudies, seasonHerd, steadyRain } from "./seasonHerd.js";

test("all windows are shown, one of them declared; held-out yards gain from rain that matters", { timeout: 120_000 }, () => {
  const { tables, charts } = answered(rainLagAndShape(seasonHerd()));
  const grid = tables[0]!.rows;
  expect(grid.filter((row) => row["kind"] === "declared").map((row) => row["contrast"])).toEqual(["rainMm14d per 10"]);
  // Holm's p is never below the plain one.
  for (const row of grid) if (row["p"] !== null) expect(Number(row["adjustedP"])).toBeGreaterThanOrEqual(Number(row["p"]));
  expect(
    tables
      .find(({ caption }) => caption === "Yards held out in turn")!
      .rows.find((row) => row["what"] === "Gain from the exposure")!["value"],
  ).toBeGreaterThan(0);
  expect(charts).toHaveLength(3);
});

describe.each([...poorStudies(), steadyRain()])("%s", (_, study, reason) => {
  test("says why there is no estimate", () => {
    const reply = rainLagAndShape(study);
    expect(reply.kind === "not_enough_data" && reason.test(reply.reason)).toBe(true);
  });
});
