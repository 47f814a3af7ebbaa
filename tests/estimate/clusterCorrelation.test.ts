import { describe, expect, test } from "vitest";
import { clusterCorrelation } from "../../src/estimate/clusterCorrelation.js";
import { closedForm } from "./closedForm.js";
import { cattleHerds, clustersOf, litters, swabs, wheeze } from "./clusterData.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

// R 4.2.2 from the definitions; the ANOVA value of all periods equals aod::iccbin(..., method = "C"). In order: n0, mean squares
// between and within, ANOVA and Fleiss-Cuzick correlation, 1 + (mean size - 1) x icc.
// prettier-ignore
const table = [
  ["cbpp, all periods", cattleHerds(false), [55.4518154055, 0.581625887607, 0.0957885067179, 0.0838014185325, 0.076762199699, 5.62025154176]],
  ["cbpp, period 1", cattleHerds(true), [18.3818088386, 0.580797818422, 0.150129043558, 0.134992675946, 0.12347412538, 3.36687158492]],
  ["bacteria", swabs(), [4.39628942486, 0.244124922696, 0.133137254902, 0.159396890075, 0.153351315562, 1.54194942625]],
  ["ohio", wheeze(), [4, 0.265901637066, 0.0831781502173, 0.354502704026, 0.353882001172, 2.06350811208]],
] as const;

test.each(table)("%s", (_, clusters, wanted) => {
  const result = clusterCorrelation(clusters);
  const { averageSize, betweenMeanSquare, withinMeanSquare, icc, fleissCuzick, designEffect } = result;
  // Twelve printed digits.
  expectNear([averageSize, betweenMeanSquare, withinMeanSquare, icc, fleissCuzick, designEffect], wanted, 1e-10);
});

test("mean squares are those of R's anova of the 0/1 findings", () => {
  const { betweenMeanSquare, withinMeanSquare } = clusterCorrelation(swabs());
  expectNear([betweenMeanSquare, withinMeanSquare], closedForm("bacteria mean squares"), 1e-12);
});

test("litters of rats, by R package aod", () => {
  expectNear(
    [clusterCorrelation(litters.control).icc, clusterCorrelation(litters.treated).icc],
    [0.0290913854399, 0.372134813814],
    1e-10,
  );
});

test("four horses worked by hand: MSB 0.4167, MSW 0.2083, icc 0.2, design effect 1.6", () => {
  const { betweenMeanSquare, withinMeanSquare, icc, designEffect } = clusterCorrelation(clustersOf("3/4 0/4 1/4 2/4"));
  expectNear([betweenMeanSquare, withinMeanSquare, icc, designEffect], [5 / 12, 5 / 24, 0.2, 1.6], 1e-12);
});

describe("where it cannot be had it is null", () => {
  test.each([
    ["one cluster", "3/4"],
    ["clusters of one member", "1/1 0/1 1/1"],
    ["no cases", "0/4 0/4"],
    ["nothing but cases", "4/4 3/3"],
  ])("%s", (_, text) => {
    const { icc, fleissCuzick, designEffect } = clusterCorrelation(clustersOf(text));
    expect([icc, fleissCuzick, designEffect]).toEqual([null, null, null]);
  });

  test("nothing examined is an error", () => {
    expect(faultCode(() => clusterCorrelation([]))).toBe("empty");
    expect(faultCode(() => clusterCorrelation([{ cases: 0, n: 0 }]))).toBe("empty");
  });
});
