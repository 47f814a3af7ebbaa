import { expect, test } from "vitest";
import { attributableFraction } from "../../src/estimate/attributableFraction.js";
import { randomFrom } from "../../src/estimate/randomFrom.js";
import { faultCode } from "./faultCode.js";

const rows = Array.from({ length: 60 }, (_, i) => ({
  case: i % 3 === 0 || i % 7 === 0,
  exposed: i % 2 === 0,
  cluster: `yard ${i % 12}`,
}));
const limits = (seed: string) => {
  const { lower, upper } = attributableFraction(rows, { random: randomFrom(seed), replicates: 200 }).population;
  return [lower, upper];
};

test("equal seeds give equal limits, others give others", () => {
  expect(limits("a")).toEqual(limits("a"));
  expect(limits("a")).not.toEqual(limits("b"));
});

test("an estimate that draws samples says so when it is given nothing to draw with", () => {
  const without = () => attributableFraction(rows, { replicates: 200 } as Parameters<typeof attributableFraction>[1]);
  expect(faultCode(without)).toBe("empty");
  expect(without).toThrow(/no source of random numbers/);
});
