import { expect, test } from "vitest";
import { dueDates } from "../../src/derive/dueDates.js";
import { footShapes } from "../../src/derive/footShapes.js";
import { thrushCases } from "../../src/derive/thrushCases.js";
import { frontOrHindFoot } from "../../src/answer/frontOrHindFoot.js";
import { thrushNow } from "../../src/answer/thrushNow.js";
import { readStudy } from "../../src/read/readStudy.js";
import { studyFrom } from "./folder.js";

const specimens = [
  "visit_date,horse_id,foot,stage,thrush_grade,hoof_width_mm,hoof_length_mm,examined",
  "2025-03-01,Ash,LF,single,0,130,132,yes",
  "2025-03-01,Ash,RF,single,1,131,132,yes",
  "2025-03-01,Ash,LH,single,0,120,131,yes",
  "2025-03-01,Ash,RH,single,0,121,131,yes",
  "2025-03-02,cabinet 1,F,single,3,126,121,yes",
  "2025-03-02,cabinet 2,hind,single,3,112,118,yes",
  "2025-03-02,cabinet 3,U,single,3,118,119,yes",
  "2025-03-02,cabinet 4,unknown,single,,119,121,",
].join("\n");
const horses = "horse_id,yard_id,species\nAsh,Mill,horse\ncabinet 1,,horse\ncabinet 2,,\ncabinet 3,,donkey\ncabinet 4,,\n";

test("detached feet of unknown yard, side and end are read, take part in the shape of feet, and count in no prevalence", async () => {
  const study = await studyFrom({ "visits.csv": specimens, "horses.csv": horses, "yards.csv": "yard_id\nMill\n" });
  expect(study.report.counts.filter(({ severity }) => severity !== "warning")).toEqual([]);
  expect(study.visits.slice(4).map(({ horseId, foot }) => `${horseId} ${foot}`)).toEqual([
    "cabinet 1 F",
    "cabinet 2 H",
    "cabinet 3 U",
    "cabinet 4 U",
  ]);
  expect(footShapes(study).map(({ horseId, end, side, yardId }) => [horseId, end, side, yardId])).toEqual(
    expect.arrayContaining([
      ["cabinet 1", "fore", null, null],
      ["cabinet 2", "hind", null, null],
      ["cabinet 3", null, null, null],
      ["cabinet 4", null, null, null],
    ]),
  );
  const cases = thrushCases(study).filter(({ horseId }) => horseId !== "Ash");
  expect(cases.map(({ missing, thrush, end }) => [missing, thrush, end])).toEqual([
    ["specimen", null, "fore"],
    ["specimen", null, "hind"],
    ["specimen", null, null],
    ["specimen", null, null],
  ]);
  // The same herd without the cabinet gives the same answer.
  const herd = await studyFrom({
    "visits.csv": specimens.split("\n").slice(0, 5).join("\n"),
    "horses.csv": horses,
    "yards.csv": "yard_id\nMill\n",
  });
  const settings = { ...study.settings, asOf: "2025-03-10" };
  expect(thrushNow({ ...study, settings })).toEqual(thrushNow({ ...herd, settings }));
});

test("outlines of a foot of unknown end are read", async () => {
  const points = Array.from(
    { length: 3 },
    (_, index) => `cabinet 3,2025-03-02,U,wall,${String(index + 1)},${String(index)},${String(index % 2)}`,
  );
  const study = await studyFrom({
    "visits.csv": specimens,
    "outlines.csv": ["horse_id,visit_date,foot,ring,point,x_mm,y_mm", ...points].join("\n"),
  });
  expect(study.outlines.map(({ foot }) => foot)).toEqual(["U", "U", "U"]);
});

// A collection of feet of known side, each with its name: in the records they are marked by the word, or all of a file by its words in study.json.
const collection = [
  "visit_date,horse_id,foot,stage,thrush_grade,hoof_width_mm,hoof_length_mm,toe_angle_deg",
  "2025-03-02,cabinet 5,LF specimen,single,3,126,121,52",
  "2025-03-02,cabinet 5,near hind specimen,single,3,112,118,54",
  "2025-03-02,cabinet 5,RF_specimen,single,2,127,121,52",
].join("\n");

test("a specimen of known side takes part in the shape of feet and in nothing that is said of live horses", async () => {
  const [header = "", ...ofHerd] = specimens.split("\n").slice(0, 5);
  const herdRows = [`${header},toe_angle_deg`.replace(",examined", ""), ...ofHerd.map((row) => row.replace(/,yes$/, ",50"))];
  const files = { "horses.csv": "horse_id,yard_id,species\nAsh,Mill,horse\ncabinet 5,,horse\n", "yards.csv": "yard_id\nMill\n" };
  const study = await studyFrom({ ...files, "visits.csv": [...herdRows, ...collection.split("\n").slice(1)].join("\n") });
  const herd = await studyFrom({ ...files, "visits.csv": herdRows.join("\n") });
  expect(study.report.counts.filter(({ severity }) => severity !== "warning")).toEqual([]);
  expect(study.visits.slice(4).map(({ foot }) => foot)).toEqual(["LF_specimen", "LH_specimen", "RF_specimen"]);
  const shapes = footShapes(study).filter(({ horseId }) => horseId === "cabinet 5");
  expect(shapes.map(({ foot, end, side, hoofWidthMm }) => [foot, end, side, hoofWidthMm])).toEqual(
    expect.arrayContaining([
      ["LF_specimen", "fore", null, 126],
      ["LH_specimen", "hind", null, 112],
      ["RF_specimen", "fore", null, 127],
    ]),
  );
  const cases = thrushCases(study).filter(({ horseId }) => horseId === "cabinet 5");
  expect(cases.map(({ missing, thrush }) => [missing, thrush])).toEqual(cases.map(() => ["specimen", null]));
  const asOf = { asOf: "2025-03-10" };
  const [withCabinet, without] = [study, herd].map((of) => ({ ...of, settings: { ...of.settings, ...asOf } }));
  if (withCabinet === undefined || without === undefined) throw new Error("two studies");
  expect(thrushNow(withCabinet)).toEqual(thrushNow(without));
  expect(dueDates(withCabinet).map(({ horseId }) => horseId)).toEqual(["Ash"]);
});

test("a file of specimens of known side is marked by its words, and their outlines are told front from hind", async () => {
  const study = await studyFrom({
    "study.json": JSON.stringify({
      name: "Cabinet",
      gaugeDay: "ends_on_date",
      files: { visits: [{ file: "cabinet.csv", columns: { foot: { words: { VL: "LF_specimen", HR: "RH_specimen" } } } }] },
    }),
    "cabinet.csv": "visit_date,horse_id,foot,hoof_width_mm\n2025-03-02,1,VL,120\n2025-03-02,1,HR,110\n",
  });
  expect(study.report.issues.filter(({ severity }) => severity === "set_aside")).toEqual([]);
  expect(study.visits.map(({ foot }) => foot)).toEqual(["LF_specimen", "RH_specimen"]);
  const demo = await readStudy("data-demo", { today: "2026-03-01" });
  const others = new Set(demo.horses.filter(({ species }) => species !== "horse").map(({ horseId }) => horseId));
  const horse = demo.outlines.find(({ foot, horseId }) => foot === "LH" && !others.has(horseId));
  const outlines = demo.outlines.map((point) =>
    point.horseId === horse?.horseId && point.foot === "LH" ? { ...point, foot: "LH_specimen" as const } : point,
  );
  const answer = frontOrHindFoot({ ...demo, outlines });
  if (answer.kind !== "answer") throw new Error(answer.reason);
  const told = answer.tables.find(({ caption }) => caption === "Specimens, by their shape")?.rows ?? [];
  expect(told.filter((row) => row["horseId"] === horse?.horseId)).not.toEqual([]);
  for (const row of told) if (row["horseId"] === horse?.horseId) expect(row).toMatchObject({ labelled: "near hind, specimen" });
});
