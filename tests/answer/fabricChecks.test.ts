import { expect, test } from "vitest";
import { fabricChecks } from "../../src/answer/fabricChecks.js";
import { fabricCodes } from "../../src/answer/fabricCodes.js";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";
import { demoStudy } from "../simulate/demoStudy.js";
import { studyOf } from "../study.js";
import { plants } from "./fabric/plants.js";

const demo = await demoStudy();

test("the demo, whose planted faults are all of cells and rows, raises no doubt of its fabric", () => {
  expect(fabricChecks(demo)).toEqual([]);
});

test("an empty study raises none", () => {
  expect(fabricChecks(studyOf())).toEqual([]);
});

test.each(Object.entries(plants))("%s planted in the demo is told, with its place", (code, plant) => {
  const planted = plant(demo, seededRandom(`${code} of the test`));
  if (planted === null) throw new Error("the demo has no place for this fault");
  const told = fabricChecks(planted.study).filter((issue) => issue.code === code);
  const right = told.filter(({ message }) => planted.words.every((word) => message.includes(word)));
  expect(right, told.map(({ message }) => message).join("\n")).not.toEqual([]);
  // One fault may show before and after the trim, but nowhere else.
  expect(told.filter(({ message }) => !message.includes(planted.words[0] ?? ""))).toEqual([]);
  expect(right[0]).toMatchObject({ severity: "warning", value: null, row: null });
  expect(right[0]?.hint).not.toBe("");
});

test("every code that can be raised is documented, and every fault planted has a code", () => {
  expect(Object.keys(plants).sort()).toEqual(Object.keys(fabricCodes).sort());
});

test("the order of the rows does not matter", () => {
  const planted = plants.ends_swapped(demo, seededRandom("order"));
  if (planted === null) throw new Error("the demo has no place for this fault");
  const messages = (visits: typeof demo.visits) => fabricChecks({ ...planted.study, visits }).map(({ message }) => message);
  expect(messages([...planted.study.visits].reverse())).toEqual(messages(planted.study.visits));
});
