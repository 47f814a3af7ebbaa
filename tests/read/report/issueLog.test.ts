import { expect, test } from "vitest";
import { ISSUES_KEPT, issueLog } from "../../../src/read/report/issueLog.js";

const fault = { code: "bad_date", severity: "set_aside", found: '"x" is not a calendar day', hint: "Write it." } as const;
const place = { file: "visits.csv", line: 7, row: 5, column: "visit_date", value: "x" };

test("a fault becomes one sentence with its place, in one pattern", () => {
  const log = issueLog();
  log.add(fault, place);
  log.add(fault, { ...place, column: null });
  log.add(fault, { ...place, line: null, row: null, column: null, value: null });
  expect(log.issues(["visits.csv"]).map(({ message }) => message)).toEqual([
    'visits.csv: "x" is not a calendar day.',
    'visits.csv, line 7, column visit_date: "x" is not a calendar day.',
    'visits.csv, line 7: "x" is not a calendar day.',
  ]);
});

test("faults are counted by file, code, column and cost, the most frequent first", () => {
  const log = issueLog();
  log.add(fault, place);
  log.add({ ...fault, severity: "warning" }, place);
  log.add(fault, { ...place, column: "joined_on" });
  log.add(fault, place);
  expect(log.counts()).toEqual([
    { file: "visits.csv", code: "bad_date", column: "visit_date", severity: "set_aside", count: 2 },
    { file: "visits.csv", code: "bad_date", column: "visit_date", severity: "warning", count: 1 },
    { file: "visits.csv", code: "bad_date", column: "joined_on", severity: "set_aside", count: 1 },
  ]);
});

test("each kind of fault keeps its own first ones", () => {
  const log = issueLog();
  for (let line = 2; line < 1002; line++) log.add({ ...fault, severity: "warning", code: "unusual_value" }, { ...place, line });
  log.add(fault, { ...place, line: 2000 });
  const issues = log.issues(["visits.csv"]);
  expect(issues).toHaveLength(ISSUES_KEPT + 1);
  expect(issues.at(-1)).toMatchObject({ line: 2000, code: "bad_date" });
  expect(log.counts().map(({ count }) => count)).toEqual([1000, 1]);
});

test("a long value is cut to 60 characters", () => {
  const log = issueLog();
  log.add(fault, { ...place, value: "é".repeat(100) });
  expect(log.issues([])[0]?.value).toBe("é".repeat(60));
});
