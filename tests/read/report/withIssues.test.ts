import { expect, test } from "vitest";
import { ISSUES_KEPT } from "../../../src/read/report/issueLog.js";
import { withIssues } from "../../../src/read/report/withIssues.js";
import type { Issue } from "../../../src/study/Issue.js";
import { studyOf } from "../../study.js";

const issue = (line: number, file = "visits.csv"): Issue => ({
  file,
  line,
  row: null,
  column: null,
  value: null,
  code: "doubt",
  severity: "warning",
  message: "",
  hint: "",
});

test("issues are counted with those that were there, and listed in file and line order", () => {
  const input = { bytes: 1, sha256: "", rowsRead: 9, accepted: 9, setAside: 0 };
  const report = {
    ...studyOf().report,
    inputs: [
      { file: "visits.csv", kind: "visits" as const, ...input },
      { file: "horses.csv", kind: "horses" as const, ...input },
    ],
  };
  const once = withIssues(studyOf({ report }), [issue(5), issue(3, "horses.csv")]);
  const { counts, issues } = withIssues(once, [issue(2)]).report;
  expect(counts.map(({ file, count }) => [file, count])).toEqual([
    ["visits.csv", 2],
    ["horses.csv", 1],
  ]);
  expect(issues.map(({ file, line }) => [file, line])).toEqual([
    ["visits.csv", 2],
    ["visits.csv", 5],
    ["horses.csv", 3],
  ]);
});

test("all are counted and at most a hundred of a kind listed", () => {
  const many = Array.from({ length: ISSUES_KEPT + 7 }, (_, line) => issue(line));
  const { counts, issues } = withIssues(studyOf(), many).report;
  expect(counts).toEqual([expect.objectContaining({ count: ISSUES_KEPT + 7 })]);
  expect(issues).toHaveLength(ISSUES_KEPT);
});

test("without issues it is the same study", () => {
  const study = studyOf();
  expect(withIssues(study, [])).toBe(study);
});
