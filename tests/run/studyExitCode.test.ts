import { expect, test } from "vitest";
import { studyExitCode } from "../../src/run/studyExitCode.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";

const input = { file: "visits.csv", kind: "visits", bytes: 1, sha256: "", rowsRead: 2 } as const;

test("clean, set aside, unusable", () => {
  const visits = [footVisit()];
  const { report } = studyOf();
  expect(studyExitCode({ visits, report: { ...report, inputs: [{ ...input, accepted: 2, setAside: 0 }] } })).toBe(0);
  expect(studyExitCode({ visits, report: { ...report, inputs: [{ ...input, accepted: 1, setAside: 1 }] } })).toBe(1);
  expect(studyExitCode({ visits: [], report: { ...report, inputs: [{ ...input, accepted: 0, setAside: 2 }] } })).toBe(2);
});
