import { expect, test } from "vitest";
import { unanswered } from "../../../src/read/mapping/unanswered.js";

test("the path of every null is named, and nothing else", () => {
  const files = {
    visits: [
      { file: "a.csv", delimiter: null, columns: { visit_date: { header: "Datum", dates: null }, note: "Text", foot: null } },
      { file: "b.csv", columns: { thrush_grade: { words: { "++": null, "+": 1 } } } },
    ],
  };
  expect(unanswered(files)).toEqual([
    "files.visits.0.delimiter",
    "files.visits.0.columns.visit_date.dates",
    "files.visits.0.columns.foot",
    "files.visits.1.columns.thrush_grade.words.++",
  ]);
  expect(unanswered({})).toEqual([]);
});
