import { expect, test } from "vitest";
import { whatToFillIn } from "../../src/read/whatToFillIn.js";
import { studyFrom } from "./folder.js";

const visits = "visit_date,horse_id,foot\n";

test("the file that is needed comes first, with the columns that are needed in every row", async () => {
  const [first] = whatToFillIn(await studyFrom({ "visits.csv": visits }));
  expect(first).toBe(
    "Fill in visits.csv: one row is one foot at one visit; visit_date, horse_id and foot are needed in every row, the other columns where known.",
  );
});

test("a file with rows is left out, also when its rows were set aside", async () => {
  const todo = whatToFillIn(await studyFrom({ "visits.csv": `${visits}x,Ash,LF\n`, "yards.csv": "yard_id\nY1\n" }));
  expect(todo.map((sentence) => /\w+\.csv/.exec(sentence)?.[0])).toEqual([
    "horses.csv",
    "changes.csv",
    "weather.csv",
    "outlines.csv",
  ]);
  expect(todo[0]).toContain(
    "If you have it, fill in horses.csv: one row is one stay of one horse at one yard; horse_id is needed",
  );
});

test("an open gaugeDay is asked for last", async () => {
  const study = await studyFrom({ "study.json": '{"name":"T","gaugeDay":null}', "visits.csv": visits });
  expect(whatToFillIn(study).at(-1)).toMatch(/^Decide gaugeDay in study\.json.*ends_on_date.*starts_on_date.*calendar_day/);
});
