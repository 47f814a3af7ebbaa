import { expect, test } from "vitest";
import { faults, studyFrom } from "../folder.js";

const files = { "visits.csv": "visit_date,horse_id,foot\n", "yards.csv": "yard_id\nNorth\n" };
const header = "yard_id,changed_on,what\n";

test("the same change comes once; two changes of one day are two", async () => {
  const study = await studyFrom({
    ...files,
    "changes.csv": `${header}North,2025-01-01,rubber mats\nNorth,2025-01-01,gravel gateway\nNorth,2025-01-01,rubber mats\n`,
  });
  expect(study.changes.map(({ what }) => what)).toEqual(["rubber mats", "gravel gateway"]);
  expect(faults(study)).toContain("changes.csv:4 - duplicate_row set_aside");
});

test("a yard that is not known is a warning, and none without a list of yards", async () => {
  const changes = `${header}Nort,2025-01-01,mats\n`;
  expect(faults(await studyFrom({ ...files, "changes.csv": changes }))).toContain("changes.csv:2 yard_id unknown_yard warning");
  expect(faults(await studyFrom({ "visits.csv": files["visits.csv"], "changes.csv": changes }))).toEqual([
    "visits.csv:- - no_rows warning",
  ]);
});

test("a change without its day cannot be used", async () => {
  const study = await studyFrom({ ...files, "changes.csv": `${header}North,spring,mats\n` });
  expect(study.changes).toEqual([]);
});
