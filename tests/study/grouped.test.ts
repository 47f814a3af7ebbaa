import { expect, test } from "vitest";
import { grouped } from "../../src/study/grouped.js";

test("every item lands in one group, in order", () => {
  const groups = grouped(["LF", "LH", "RF", "RH"], (foot) => foot.slice(1));
  expect([...groups]).toEqual([
    ["F", ["LF", "RF"]],
    ["H", ["LH", "RH"]],
  ]);
  expect([...grouped([], () => "x")]).toEqual([]);
});
