import { expect, test } from "vitest";
import { frontOrHindFoot } from "../../src/answer/frontOrHindFoot.js";
import type { OutlinePoint } from "../../src/study/OutlinePoint.js";
import { tracing, type TracingOptions } from "../derive/tracing.js";
import { demoStudy } from "../simulate/demoStudy.js";
import { horseStay, studyOf } from "../study.js";

const demo = await demoStudy();
// Fronts rounder than hinds (common practice, no source), each horse with its own size and roundness.
const herd = ["A", "B", "C", "D", "E", "F", "G", "H"].flatMap((horseId, k): OutlinePoint[] => {
  const foot = (options: TracingOptions) => tracing({ points: 60 + k, halfHeightMm: 65, ...options, horseId });
  return [
    ...foot({ foot: "RF", halfWidthMm: 66 + ((k * 7) % 5) }),
    ...foot({ foot: "RH", halfWidthMm: 58 + ((k * 3) % 5), halfHeightMm: 64 + (k % 3) }),
  ];
});

test("the demo: no foot is mistaken, and the two detached feet are told as they were planted", () => {
  const answer = frontOrHindFoot(demo);
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.sentence).toMatch(
    /^Going by the outline alone, front and hind were mistaken for each other in 0 of 149 outlines/,
  );
  const specimens = answer.tables.find(({ caption }) => caption.startsWith("Specimens"))!.rows;
  expect(specimens.map(({ horseId, probabilityFore }) => [horseId, Number(probabilityFore) > 0.5])).toEqual([
    ["specimen 1", true],
    ["specimen 2", false],
  ]);
  expect(answer.method.missing).toBe(2);
});

test("two feet whose labels changed places are pointed out, and only they", () => {
  const changed = herd.map((row): OutlinePoint =>
    row.horseId === "C" ? { ...row, foot: row.foot === "RF" ? "RH" : "RF" } : row,
  );
  const answer = frontOrHindFoot(studyOf({ outlines: changed }));
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.sentence).toContain("The shape speaks against the label of 2 outlines.");
  const doubtful = answer.tables.find(({ caption }) => caption.startsWith("Labels"))!.rows;
  expect(doubtful.map(({ horseId, labelled }) => [horseId, labelled])).toEqual([
    ["C", "off fore"],
    ["C", "off hind"],
  ]);
});

test("donkeys are left out; few horses or one end give no rule", () => {
  const horses = ["A", "B", "C", "D"].map((horseId) => horseStay({ horseId, species: "donkey" }));
  expect(frontOrHindFoot(studyOf({ outlines: herd, horses }))).toMatchObject({
    kind: "not_enough_data",
    reason: "Usable outlines of feet of known side come from 4 horses; fewer than 5 horses, or one end alone, give no rule.",
  });
  const fronts = herd.filter(({ foot }) => foot === "RF");
  expect(frontOrHindFoot(studyOf({ outlines: fronts }))).toMatchObject({
    kind: "not_enough_data",
    reason: expect.stringContaining("not from both ends") as string,
  });
  expect(frontOrHindFoot(studyOf())).toMatchObject({ kind: "not_enough_data" });
});
