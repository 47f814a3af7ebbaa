import { expect, test } from "vitest";
import { rebuild } from "../../src/answer/rebuild.js";
import { version } from "../../src/study/version.js";
import { studyOf } from "../study.js";

const none = { read: 0, accepted: 0, setAside: 0 };
const inputs = [{ file: "visits.csv", rowsRead: 12, accepted: 10, setAside: 2, sha256: "ab".repeat(32) }];
const study = studyOf({
  report: {
    inputs: inputs as never,
    flow: {
      footVisits: { read: 12, accepted: 10, setAside: 2 },
      visits: { read: 3, accepted: 3, setAside: 0 },
      horses: none,
      yards: none,
    },
    counts: [],
    issues: [],
  },
});

test("files, settings, versions, seed and what was set aside", () => {
  const answer = rebuild(study);
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.sentence).toBe(
    `Every number comes again from 1 file with the checksums below, the settings below, underfoot ${version} and the seed “underfoot answers”; of 12 rows of feet at visits 10 were used and 2 set aside.`,
  );
  expect(answer.tables[0]!.rows[0]).toMatchObject({ file: "visits.csv", sha256: "ab".repeat(32) });
  expect(answer.tables.find(({ caption }) => caption === "Rows read, used and set aside")!.rows.slice(0, 2)).toEqual([
    { what: "feet at visits", read: 12, accepted: 10, setAside: 2 },
    { what: "visits", read: 3, accepted: 3, setAside: 0 },
  ]);
});

test("another setting is another table of settings", () => {
  const settings = (caseGrade: 1 | 2) => {
    const answer = rebuild({ ...study, settings: { ...study.settings, caseGrade } });
    return answer.kind === "answer" ? answer.tables[1] : null;
  };
  expect(settings(1)).not.toEqual(settings(2));
});

test("a study that was not read from files cannot be made again", () => {
  expect(rebuild(studyOf())).toMatchObject({ kind: "not_enough_data", reason: "The study was not read from files." });
});
