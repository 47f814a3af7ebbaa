import { describe, expect, test } from "vitest";
import { rainEffect } from "../../src/answer/rainEffect.js";
import { answered } from "./climateAnswer.js";
import { poorStudies, seasonHerd, steadyRain } from "./seasonHerd.js";

test("the declared odds ratio holds the planted one, with unit, n and level", { timeout: 60_000 }, () => {
  const study = seasonHerd();
  const { tables, charts, method, sentence } = answered(rainEffect(study));
  const declared = tables[0]!.rows.find((row) => row["kind"] === "declared")!;
  // Planted: exp(0.3) per 10 mm.
  expect(Number(declared["lower"]) < Math.exp(0.3) && Math.exp(0.3) < Number(declared["upper"])).toBe(true);
  expect(declared["adjusted"]).toBe("season, front or hind");
  expect(method.n).toBe(study.visits.length);
  expect(sentence).toContain("95% interval");
  expect(charts).toHaveLength(2);
  expect(tables[0]!.rows.map((row) => row["name"]).slice(0, 3)).toEqual([
    "Crude",
    "Crude, high against low",
    "Mantel-Haenszel by month of the year",
  ]);
});

describe.each([...poorStudies(), steadyRain()])("%s", (_, study, reason) => {
  test("says why there is no estimate", () => {
    const reply = rainEffect(study);
    expect(reply.kind).toBe("not_enough_data");
    if (reply.kind === "not_enough_data") expect(reply.reason).toMatch(reason);
  });
});
