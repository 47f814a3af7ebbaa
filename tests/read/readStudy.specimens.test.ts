import { expect, test } from "vitest";
import { footShapes } from "../../src/derive/footShapes.js";
import { thrushCases } from "../../src/derive/thrushCases.js";
import { thrushNow } from "../../src/answer/thrushNow.js";
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
