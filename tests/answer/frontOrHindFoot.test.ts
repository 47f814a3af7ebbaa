import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { expect, test } from "vitest";
import { frontOrHindFoot } from "../../src/answer/frontOrHindFoot.js";
import { readStudy } from "../../src/read/readStudy.js";
import type { OutlinePoint } from "../../src/study/OutlinePoint.js";
import { tracing, type TracingOptions } from "../derive/tracing.js";
import { footVisit } from "../footVisit.js";
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

test("the demo: no outline is mistaken, and the two detached feet are told as they were planted, traced or by caliper", () => {
  const answer = frontOrHindFoot(demo);
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.sentence).toMatch(
    /^Going by the outline alone, before trimming, front and hind were mistaken for each other in 0 of 81 outlines/,
  );
  const specimens = answer.tables.find(({ caption }) => caption.startsWith("Specimens"))!.rows;
  expect(specimens.map(({ horseId, by, probabilityFore }) => [horseId, by, Number(probabilityFore) > 0.5])).toEqual([
    ["specimen 1", "outline", true],
    ["specimen 2", "outline", false],
    ["specimen 1", "caliper", true],
    ["specimen 2", "caliper", false],
  ]);
  // Stages stay apart: 81 before trimming and 66 single ones carry a rule each, 2 of unknown stage none; 2 more cannot be used.
  const seen = answer.tables[0]!.rows.filter(({ rule }) => rule === "outlines, discriminant, horses not seen");
  expect(seen.map(({ stage, n, foreAsHind, hindAsFore }) => [stage, n, foreAsHind, hindAsFore])).toEqual([
    ["before trimming", 81, 0, 0],
    ["one reading a visit", 66, 0, 0],
  ]);
  expect(answer.method).toMatchObject({ n: 81, missing: 70 });
  // Width over length by caliper alone is mistaken, and how often is said.
  const calipers = answer.tables[0]!.rows.filter(({ rule }) => String(rule).startsWith("caliper"));
  expect(calipers.length).toBeGreaterThanOrEqual(3);
  for (const { estimate, lower, upper } of calipers) {
    expect(Number(estimate)).toBeGreaterThan(Number(lower));
    expect(Number(lower)).toBeGreaterThan(0);
    expect(Number(upper)).toBeLessThan(0.4);
  }
});

test("a folder of files: feet of unknown end, traced and by caliper, get a chance, and are told right", async () => {
  const folder = mkdtempSync(`${tmpdir()}/underfoot-`);
  try {
    const widths = herd.map(({ horseId, foot }) => `${horseId} ${foot}`);
    const visits = [...new Set(widths)].map((name) => {
      const [horseId, foot] = name.split(" ") as [string, string];
      const k = horseId.charCodeAt(0) - 65;
      return `2025-01-06,${horseId},${foot},single,${foot === "RF" ? 130 + ((k * 7) % 5) : 117 + ((k * 3) % 5)},${foot === "RF" ? 128 : 126 + (k % 3)}`;
    });
    const unknown = ["2025-02-03,box 1,U,single,132,128", "2025-02-03,box 2,U,single,118,127"];
    const header = "visit_date,horse_id,foot,stage,hoof_width_mm,hoof_length_mm";
    writeFileSync(`${folder}/visits.csv`, [header, ...visits, ...unknown].join("\n"));
    const detached = [
      ...tracing({ horseId: "box 3", foot: "U", halfWidthMm: 67, halfHeightMm: 65 }),
      ...tracing({ horseId: "box 4", foot: "U", halfWidthMm: 59, halfHeightMm: 65 }),
    ];
    const points = [...herd, ...detached].map(({ horseId, visitDate, foot, ring, point, xMm, yMm }) =>
      [horseId, visitDate, foot, "single", ring, point, xMm, yMm].join(","),
    );
    writeFileSync(`${folder}/outlines.csv`, ["horse_id,visit_date,foot,stage,ring,point,x_mm,y_mm", ...points].join("\n"));
    writeFileSync(`${folder}/study.json`, JSON.stringify({ name: "Feet in boxes" }));
    const study = await readStudy(folder);
    expect(study.visits.filter(({ foot }) => foot === "U")).toHaveLength(2);
    const answer = frontOrHindFoot(study);
    if (answer.kind !== "answer") throw new Error(answer.reason);
    const rows = answer.tables.find(({ caption }) => caption.startsWith("Specimens"))!.rows;
    expect(
      rows.map(({ horseId, labelled, by, probabilityFore }) => [horseId, labelled, by, Number(probabilityFore) > 0.9]),
    ).toEqual([
      ["box 3", "end and side unknown", "outline", true],
      ["box 4", "end and side unknown", "outline", false],
      ["box 1", "end and side unknown", "caliper", true],
      ["box 2", "end and side unknown", "caliper", false],
    ]);
    expect(answer.sentence).toMatch(
      /Specimens: box 3 front \(.*\), box 4 hind \(.*\), box 1 front \(.*, by caliper\) and box 2 hind \(.*, by caliper\)\./,
    );
    expect(answer.charts[0]!.table.rows.filter(({ kind }) => kind === "specimen")).toHaveLength(2);
  } finally {
    rmSync(folder, { recursive: true });
  }
});

test("without outlines width over length by caliper answers alone, and says that an outline would be surer", () => {
  const visits = ["A", "B", "C", "D", "E"].flatMap((horseId, k) => [
    footVisit({ horseId, foot: "LF", hoofWidthMm: 130 + k, hoofLengthMm: 128 }),
    footVisit({ horseId, foot: "LH", hoofWidthMm: 117 + ((k * 3) % 5), hoofLengthMm: 127 }),
  ]);
  const unknown = footVisit({ horseId: "box", foot: "U", stage: "after_trim", hoofWidthMm: 118, hoofLengthMm: 127 });
  const answer = frontOrHindFoot(studyOf({ visits: [...visits, unknown] }));
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.sentence).toMatch(
    /^Going by the width over length by caliper alone, stage not recorded, front and hind were mistaken for each other in 0 of 10 readings of horses .* Specimens: box hind \(.*, by caliper\)\.$/,
  );
  expect(answer.charts).toEqual([]);
  expect(answer.cautions.join(" ")).toContain("trace one that matters");
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
    reason: "No rule can be made that tells front from hind: outlines, before trim: 4 horses; 5 are needed.",
  });
  const fronts = herd.filter(({ foot }) => foot === "RF");
  expect(frontOrHindFoot(studyOf({ outlines: fronts }))).toMatchObject({
    kind: "not_enough_data",
    reason: expect.stringContaining("only one end was recorded") as string,
  });
  expect(frontOrHindFoot(studyOf())).toMatchObject({ kind: "not_enough_data" });
});
