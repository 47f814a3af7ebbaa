import { expect, test } from "vitest";
import { dueTable } from "../../src/answer/dueTable.js";
import { dueHorses } from "./dueHorses.js";

test("one row a horse, by date, with dates that a spreadsheet can sort", () => {
  const { caption, rows } = dueTable(dueHorses());
  expect(caption).toBe("Due dates as of 2025-03-01");
  expect(rows.map((row) => [row["horse"], row["state"], row["dueOn"], row["daysLeft"]])).toEqual([
    ["Ash", "over", "2025-02-17", -12],
    ["Briar", "past its date", "2025-02-23", -6],
    ["Cob", "due", "2025-03-01", 0],
    ["Dun", "due", "2025-03-03", 2],
    ["Elm", "due", "2025-03-10", 9],
    ["Fern", "due", "2025-03-30", 29],
    ["Gale", "no interval agreed", null, null],
    ["Hazel", "no routine visit yet", null, null],
  ]);
});
