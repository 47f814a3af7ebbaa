import { expect, test } from "vitest";
import { groupIndex } from "../../../src/estimate/design/groupIndex.js";

const rows = [
  { yard: "A", horse: 1 },
  { yard: "B", horse: 1 },
  { yard: "A", horse: 2 },
  { yard: "A", horse: 1 },
];

test("horses named alike in two yards are two horses, counted in order of appearance", () => {
  const groups = groupIndex(rows, Int32Array.of(0, 1, 2, 3), ["yard", "horse"]);
  expect([...groups.index]).toEqual([0, 1, 2, 0]);
  expect(groups.labels).toEqual([
    ["A", 1],
    ["B", 1],
    ["A", 2],
  ]);
});

test("only the rows used count, and the text 1 is not the number 1", () => {
  const { index, count } = groupIndex([...rows, { yard: "A", horse: "1" }], Int32Array.of(3, 4), ["horse"]);
  expect([[...index], count]).toEqual([[0, 1], 2]);
});

test("what cannot name a group is refused", () => {
  expect(() => groupIndex([{ yard: ["A"] }], Int32Array.of(0), ["yard"])).toThrow(/"yard" holds \["A"\] in row 1/);
});
