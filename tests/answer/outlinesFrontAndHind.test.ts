import { expect, test } from "vitest";
import { outlinesFrontAndHind } from "../../src/answer/outlinesFrontAndHind.js";
import { tracing } from "../derive/tracing.js";
import { demoStudy } from "../simulate/demoStudy.js";
import { horseStay, studyOf } from "../study.js";

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

test("donkeys and mules have no part, and stages are not mixed", () => {
  const pair = (horseId: string, k: number, stage: "before_trim" | "after_trim", wide: number) => [
    ...tracing({ horseId, stage, foot: "RF", halfWidthMm: wide + (k % 3), points: 60 + k }),
    ...tracing({ horseId, stage, foot: "RH", halfWidthMm: wide - 8 + (k % 2), points: 62 + k }),
  ];
  const names = ["A", "B", "C", "D", "E", "F"];
  const own = names.flatMap((horseId, k) => pair(horseId, k, "before_trim", 66));
  const others = [
    ...names.slice(0, 5).flatMap((horseId, k) => pair(horseId, k, "after_trim", 90)),
    ...pair("donkey", 1, "before_trim", 90),
  ];
  const horses = [horseStay({ horseId: "donkey", species: "donkey" })];
  const [plain, mixed] = [own, [...own, ...others]].map((outlines) => outlinesFrontAndHind(studyOf({ outlines, horses })));
  if (plain!.kind !== "answer" || mixed!.kind !== "answer") throw new Error("no answer");
  expect(mixed!.tables).toEqual(plain!.tables);
  expect(mixed!.sentence).toBe(plain!.sentence);
  expect(mixed!.charts).toEqual(plain!.charts);
  expect([plain!.method.missing, mixed!.method.missing]).toEqual([0, 10]);
});
