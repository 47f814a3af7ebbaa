import { expect, test } from "vitest";
import { faults, studyFrom } from "../folder.js";

test("one row per yard; a yard that comes again is set aside with the line of the first", async () => {
  const study = await studyFrom({
    "visits.csv": "visit_date,horse_id,foot\n",
    "yards.csv": "yard_id,ground\nNorth,clay\nSouth,sand\nnorth,loam\nNorth,chalk\n",
  });
  expect(study.yards.map(({ yardId, ground }) => [yardId, ground])).toEqual([
    ["North", "clay"],
    ["South", "sand"],
    ["north", "loam"],
  ]);
  expect(faults(study)).toContain("yards.csv:5 yard_id duplicate_row set_aside");
  expect(study.report.issues.find(({ code }) => code === "duplicate_row")?.message).toContain("line 2");
});
