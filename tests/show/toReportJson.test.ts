import { expect, test } from "vitest";
import { toReportJson } from "../../src/show/toReportJson.js";
import type { DataReport } from "../../src/study/DataReport.js";
import { studyFrom } from "../read/folder.js";

test("everything the report holds comes back from the JSON, after the verdict", async () => {
  const { report } = await studyFrom({ "visits.csv": 'visit_date,horse_id,foot,note\n2025-03-01,Ash,LF,"a ""b"""\nx,Ash,LF,\n' });
  const parsed = JSON.parse(toReportJson(report)) as DataReport & { verdict: string };
  const { verdict, ...rest } = parsed;
  expect(verdict).toBe("rows_set_aside");
  expect(rest).toEqual(report);
  expect(Object.keys(parsed)).toEqual(["verdict", "inputs", "flow", "counts", "issues"]);
});
