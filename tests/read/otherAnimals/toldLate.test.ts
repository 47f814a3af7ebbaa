import { expect, test } from "vitest";
import { readStudy } from "../../../src/read/readStudy.js";
import type { SetAsideFile, SetAsideRow } from "../../../src/read/SetAsideRow.js";
import { inFolder, today } from "../folder.js";

const header = "visit_date,horse_id,foot,thrush_grade,hoof_width_mm,hoof_length_mm,toe_length_mm,note";
const horse = ["LF", "RF", "LH", "RH"].map((foot) => `2025-01-06,Rowan,${foot},0,120,125,80,`);
const cow = ["LF", "RF"].map((foot) => `2025-01-06,Daisy,${foot},,60,100,75,"outer claw,  long"`);
const files = {
  "study.json": '{"name":"Test","gaugeDay":"ends_on_date"}',
  "visits.csv": [header, ...horse, "2025-01-06,Rowan,XX,0,,,,", ...cow].join("\n"),
  "horses.csv": "horse_id,yard_id\nRowan,Top\nDaisy,Low",
};

test("rows of other animals reach whoever collects the rows that are set aside, as they stand in the file, once each", async () => {
  const rows: [SetAsideFile["file"], SetAsideRow][] = [];
  const { report } = await inFolder(files, (folder) =>
    readStudy(folder, { today, setAside: ({ file }, row) => rows.push([file, row]) }),
  );
  expect(rows.map(([file, { line, text }]) => [file, line, text])).toEqual([
    ["visits.csv", 6, "2025-01-06,Rowan,XX,0,,,,"],
    ["horses.csv", 3, "Daisy,Low"],
    ["visits.csv", 7, cow[0]],
    ["visits.csv", 8, cow[1]],
  ]);
  expect(rows[2]?.[1].reasons).toEqual([expect.stringMatching(/^does not look like a horse: the note says "claw"; /)]);
  const setAside = report.inputs.reduce((sum, input) => sum + input.setAside, 0);
  expect(rows).toHaveLength(setAside);
});
