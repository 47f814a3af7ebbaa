import { expect, test } from "vitest";
import { repeatedTracings } from "../../src/derive/repeatedTracings.js";
import { tracedOutlines } from "../../src/derive/tracedOutlines.js";
import { tracing, type TracingOptions } from "./tracing.js";

const pairs = (...feet: readonly TracingOptions[]) =>
  repeatedTracings(tracedOutlines({ outlines: feet.flatMap((foot) => tracing(foot)) })).map(({ first, second }) => [
    first.tracing,
    second.tracing,
  ]);

test("two tracings of one foot make a pair, three make three", () => {
  expect(pairs({}, { tracing: "2" })).toEqual([[null, "2"]]);
  expect(pairs({ tracing: "3" }, { tracing: "1" }, { tracing: "2" })).toEqual([
    ["1", "2"],
    ["1", "3"],
    ["2", "3"],
  ]);
});

test("not across a trim, a day, a foot or a horse, and not with one that cannot be used", () => {
  const others: readonly TracingOptions[] = [
    { tracing: "2", stage: "after_trim" },
    { tracing: "2", visitDate: "2025-01-07" },
    { tracing: "2", foot: "LF" },
    { tracing: "2", horseId: "B" },
    { tracing: "2", points: 10 },
  ];
  for (const other of others) expect(pairs({}, other)).toEqual([]);
});
