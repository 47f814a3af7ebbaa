import { expect, test } from "vitest";
import { outlinesFrontAndHind } from "../../src/answer/outlinesFrontAndHind.js";
import { demoStudy } from "../simulate/demoStudy.js";
import { studyOf } from "../study.js";

const demo = await demoStudy();

// Common practice, no source: front feet are rounder, hind feet more pointed.
test("the demo: fronts are broader at the toe and wider for their length", () => {
  const answer = outlinesFrontAndHind(demo);
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.sentence).toMatch(/differed from that of hind feet \(permutation test within horses, p /);
  const rows = answer.tables[0]!.rows;
  const of = (title: string) => rows.find((row) => row["title"] === title)!;
  expect(Number(of("Width near the toe over greatest width")["lower"])).toBeGreaterThan(0.08);
  expect(Number(of("Width over length")["lower"])).toBeGreaterThan(0.04);
  expect(answer.charts).toHaveLength(1);
});

test("the same every time, whatever the order of the rows", () => {
  expect(outlinesFrontAndHind({ ...demo, outlines: [...demo.outlines].reverse() })).toEqual(outlinesFrontAndHind(demo));
});

test("without pairs it cannot be said", () => {
  expect(outlinesFrontAndHind(studyOf())).toMatchObject({
    kind: "not_enough_data",
    reason: expect.stringMatching(/^No horses have/) as string,
  });
});
