import { expect, test } from "vitest";
import { faults, studyFrom } from "../folder.js";

const header = "horse_id,visit_date,foot,ring,point,x_mm,y_mm";

async function read(...rows: readonly string[]) {
  const study = await studyFrom({
    "visits.csv": "visit_date,horse_id,foot\n2025-06-01,Ash,LF\n",
    "horses.csv": "horse_id,species\nAsh,horse\nDaisy,cow\n",
    "outlines.csv": [header, ...rows].join("\n"),
  });
  return { kept: study.outlines.map(({ line }) => line), said: faults(study).filter((fault) => fault.startsWith("outlines")) };
}

// What is wrong with a whole tracing is told apart (warnOfOutlines.test.ts).
const ofRows = (fault: string) => !fault.includes("outline_");

test("numbered points and landmarks, each once in a ring", async () => {
  const { kept, said } = await read(
    "Ash,2025-06-01,LF,wall,1,0,1.5",
    "Ash,2025-06-01,LF,frog,1,0,1.5",
    "Ash,2025-06-01,LF,wall,toe,0,60",
    "Ash,2025-06-01,LF,wall,1,9,9",
  );
  expect(kept).toEqual([2, 3, 4]);
  expect(said.filter(ofRows)).toEqual(["outlines.csv:5 point duplicate_row set_aside"]);
});

test("two tracings, or one before and one after the trim, may hold the same points", async () => {
  const study = await studyFrom({
    "visits.csv": "visit_date,horse_id,foot\n2025-06-01,Ash,LF\n",
    "horses.csv": "horse_id,species\nAsh,horse\n",
    "outlines.csv": [
      "horse_id,visit_date,foot,stage,tracing,observer_id,ring,point,x_mm,y_mm",
      "Ash,2025-06-01,LF,before_trim,,K,wall,1,0,1",
      "Ash,2025-06-01,LF,before_trim,2,M,wall,1,0,1",
      "Ash,2025-06-01,LF,after_trim,2,M,wall,1,0,1",
      "Ash,2025-06-01,LF,after_trim,2,K,wall,1,0,1",
    ].join("\n"),
  });
  expect(study.outlines.map(({ stage, tracing, observerId }) => [stage, tracing, observerId])).toEqual([
    ["before_trim", null, "K"],
    ["before_trim", "2", "M"],
    ["after_trim", "2", "M"],
  ]);
  expect(faults(study).filter((fault) => fault.startsWith("outlines") && ofRows(fault))).toEqual([
    "outlines.csv:5 point duplicate_row set_aside",
  ]);
});

test("a point needs a known equid, a day that has been, and a place", async () => {
  const { kept, said } = await read(
    "Oak,2025-06-01,LF,wall,1,0,1",
    "Daisy,2025-06-01,LF,wall,1,0,1",
    "Ash,2025-07-01,LF,wall,1,0,1",
    "Ash,2025-06-01,LF,wall,2,,1",
    "Ash,2025-06-01,LF,sole,1,0,1",
  );
  expect(kept).toEqual([]);
  expect(said).toEqual([
    "outlines.csv:2 horse_id unknown_horse set_aside",
    "outlines.csv:3 horse_id not_equine set_aside",
    "outlines.csv:4 visit_date visit_in_future set_aside",
    "outlines.csv:5 x_mm required_empty set_aside",
    "outlines.csv:6 ring unknown_code set_aside",
  ]);
});
