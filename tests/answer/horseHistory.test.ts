import { expect, test } from "vitest";
import { horseHistory } from "../../src/answer/horseHistory.js";
import { studyOf } from "../study.js";
import { herd } from "./herd.js";
import { oneHorse } from "./oneHorse.js";

test("all four feet, visit by visit, newest first, with what was not looked at", () => {
  const answer = horseHistory(oneHorse());
  expect(answer).toMatchObject({
    sentence:
      "3 visits from 6 January 2025 to 10 March 2025. Visits with thrush of grade 1 or more, of those graded: near fore 0 of 2, off fore 0 of 1, near hind 0 of 1 and off hind 3 of 3.",
    method: { n: 7, missing: 1 },
  });
  expect(answer.kind === "answer" && answer.tables[0]!.rows).toEqual([
    { date: "10 Mar 2025", why: "lame", LF: null, RF: null, LH: null, RH: "thrush 3; abscess" },
    {
      date: "24 Feb 2025",
      why: "routine",
      LF: "thrush 0",
      RF: "not looked at: would not stand",
      LH: null,
      RH: "thrush 2 (central, medial); crack toe from ground 12 mm",
    },
    { date: "6 Jan 2025", why: "routine", LF: "thrush 0", RF: "thrush 0", LH: "thrush 0", RH: "thrush 2 (central)" },
  ]);
});

test("the drawing: grade, not looked at, not graded, and what is the vet's", () => {
  const answer = horseHistory(oneHorse());
  const [chart] = answer.kind === "answer" ? answer.charts : [];
  expect(chart!.table.rows).toEqual([
    { visit: "6 Jan 2025", "near fore": "0", "off fore": "0", "near hind": "0", "off hind": "2" },
    {
      visit: "24 Feb 2025",
      "near fore": "0",
      "off fore": "not looked at",
      "near hind": "not graded",
      "off hind": "2 (the vet's)",
    },
    {
      visit: "10 Mar 2025",
      "near fore": "not graded",
      "off fore": "not graded",
      "near hind": "not graded",
      "off hind": "3 (the vet's)",
    },
  ]);
  expect(chart!.reading).toBe("Grades by visit, oldest first: near fore 0 0 –; off fore 0 × –; near hind 0 – –; off hind 2 2 3.");
});

test("only the latest are shown when told so, and the count of all is said", () => {
  const answer = horseHistory(oneHorse(), { mostVisits: 1, mostDrawn: 2 });
  expect(answer).toMatchObject({ tables: [{ caption: expect.stringContaining("the latest 1 of 3 visits") as string }] });
  expect(answer.kind === "answer" && [answer.tables[0]!.rows.length, answer.charts[0]!.table.rows.length]).toEqual([1, 2]);
});

test("one visit; a case grade of 3; row order", () => {
  const study = oneHorse();
  const one = { ...study, visits: study.visits.slice(0, 4) };
  expect(horseHistory(one)).toMatchObject({ sentence: expect.stringMatching(/^1 visit on 6 January 2025\./) as string });
  const strict = { ...study, settings: { ...study.settings, caseGrade: 3 as const } };
  expect(horseHistory(strict)).toMatchObject({
    sentence: expect.stringContaining("thrush of grade 3, of those graded: near fore 0 of 2") as string,
  });
  expect(horseHistory({ ...study, visits: [...study.visits].reverse() })).toEqual(horseHistory(study));
});

test("of no horse, or of several, there is no history", () => {
  expect(horseHistory(studyOf())).toMatchObject({ kind: "not_enough_data" });
  expect(horseHistory(herd({ A: [["2025-01-06", 0, 0]], B: [["2025-01-06", 0, 0]] }))).toMatchObject({
    reason: "A history is of one horse; these records are of 2.",
  });
});
