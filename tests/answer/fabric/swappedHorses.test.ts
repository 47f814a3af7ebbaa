import { expect, test } from "vitest";
import { swappedHorses } from "../../../src/answer/fabric/swappedHorses.js";
import type { FootVisit } from "../../../src/study/FootVisit.js";
import { measuredHerd } from "./measuredHerd.js";
import { edited } from "./plants.js";

const herd = measuredHerd();
const day = herd.visits[0]?.visitDate ?? "";
const renamed = (names: Readonly<Record<string, string>>, of: (row: FootVisit) => boolean = () => true) =>
  edited(herd, (row) => (row.visitDate === day && of(row) ? { ...row, horseId: names[row.horseId] ?? row.horseId } : row));

test("a herd under the right names raises nothing", () => {
  expect(swappedHorses(herd)).toEqual([]);
});

test("two horses of a yard whose rows of a day were exchanged are told, with the measure that tells most", () => {
  const [issue, ...more] = swappedHorses(renamed({ "Horse 2": "Horse 4", "Horse 4": "Horse 2" }));
  expect(more).toEqual([]);
  expect(issue?.code).toBe("horses_swapped");
  expect(issue?.message).toMatch(
    /the rows of Horse 2 and Horse 4 on 2024-10-04 were probably exchanged: mean [a-z ]+ of the four feet Horse 2 /,
  );
  expect(issue?.message).toMatch(/on 5 other days, Horse 4 /);
});

test("horses of two yards are not held against each other", () => {
  expect(swappedHorses(renamed({ "Horse 2": "Horse 3", "Horse 3": "Horse 2" }))).toEqual([]);
});

test("two feet of four are no exchange of horses", () => {
  expect(swappedHorses(renamed({ "Horse 2": "Horse 4", "Horse 4": "Horse 2" }, ({ foot }) => foot.startsWith("L")))).toEqual([]);
});

test("one horse's measures written for another is no exchange: the other still fits itself", () => {
  const of = new Map(
    herd.visits.filter((row) => row.visitDate === day && row.horseId === "Horse 4").map((row) => [row.foot, row]),
  );
  const study = edited(herd, (row) => {
    const source = row.visitDate === day && row.horseId === "Horse 2" ? of.get(row.foot) : undefined;
    return source === undefined ? row : { ...source, horseId: row.horseId, line: row.line };
  });
  expect(swappedHorses(study)).toEqual([]);
});
