import { expect, test } from "vitest";
import { spelledTwoWays } from "../../../src/answer/fabric/spelledTwoWays.js";
import { footVisit } from "../../footVisit.js";
import { horseStay, studyOf, yard } from "../../study.js";

const horses = (...names: string[]) =>
  spelledTwoWays(studyOf({ visits: names.map((horseId, at) => footVisit({ horseId, line: at + 2 })) })).map(({ line }) => line);

test("capitals, accents, spaces and marks do not make another horse; the rarer spelling is named by its first line", () => {
  expect(horses("Rowan", "Rowan", "rowan")).toEqual([4]);
  expect(horses("Édith", "Edith", "Édith")).toEqual([3]);
  expect(horses("Old Tom", "Old-Tom", "Old Tom")).toEqual([3]);
});

test("numbers, and names that differ in a letter, stay apart", () => {
  expect(horses("Rowan", "Rowena")).toEqual([]);
  expect(horses("Horse 1-2", "Horse 12")).toEqual([]);
  expect(horses("Horse 1", "Horse 11")).toEqual([]);
});

test("observers and yards are looked at too", () => {
  const study = studyOf({
    visits: [footVisit({ observerId: "K" }), footVisit({ observerId: "k." })],
    horses: [horseStay({ horseId: "A", yardId: "Top Yard" })],
    yards: [yard({ yardId: "TopYard" })],
  });
  expect(spelledTwoWays(study).map(({ column }) => column)).toEqual(["observer_id", "yard_id"]);
});
