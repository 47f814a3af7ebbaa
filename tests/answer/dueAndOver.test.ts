import { expect, test } from "vitest";
import { dueAndOver } from "../../src/answer/dueAndOver.js";
import { studyOf } from "../study.js";
import { dueHorses } from "./dueHorses.js";
import { reversed } from "./herd.js";

const study = dueHorses();

test("who is over, past, due this week, next week and later, and who has no date", () => {
  const answer = dueAndOver(study);
  expect(answer).toMatchObject({
    kind: "answer",
    sentence:
      "On 1 March 2025 1 horse is over the date by more than 7 days: Ash (12 days); 1 more is past it by less. 2 fall due in the seven days from then, 1 in the seven after and 1 later. 2 horses have no date.",
    method: { n: 6, missing: 2 },
  });
  const tables = answer.kind === "answer" ? answer.tables : [];
  expect(tables.map(({ caption, rows }) => [caption, rows.map((row) => row["horse"])])).toEqual([
    ["Over: past the date by more than 7 days", ["Ash"]],
    ["Past the date, by 7 days at most", ["Briar"]],
    ["Due this week, 1 Mar 2025 to 7 Mar 2025", ["Cob", "Dun"]],
    ["Due next week, 8 Mar 2025 to 14 Mar 2025", ["Elm"]],
    ["Due from 15 Mar 2025 on", ["Fern"]],
    ["Horses without a date", ["Gale", "Hazel"]],
  ]);
  expect(tables[0]!.rows[0]).toEqual({
    horse: "Ash",
    yard: "Low",
    dueOn: "17 Feb 2025",
    days: 12,
    last: "6 Jan 2025",
    interval: 42,
  });
  expect(tables[5]!.rows).toEqual([
    { horse: "Gale", yard: "High", why: "no interval agreed", last: "1 Feb 2025" },
    { horse: "Hazel", yard: "High", why: "no routine visit yet", last: null },
  ]);
});

test("the edge between this week and next is the seventh day", () => {
  const later = dueAndOver({ ...study, settings: { ...study.settings, asOf: "2025-03-03" } });
  // Elm, due on 10 March: 7 days from 3 March, so next week; from 4 March this week.
  const captions = (answer: typeof later) =>
    answer.kind === "answer" ? answer.tables.map(({ caption, rows }) => [caption.slice(0, 8), rows.length]) : [];
  expect(captions(later)).toContainEqual(["Due next", 1]);
  expect(captions(dueAndOver({ ...study, settings: { ...study.settings, asOf: "2025-03-04" } }))).toContainEqual(["Due this", 1]);
});

test("of one yard, the yard is not said in every row", () => {
  const answer = dueAndOver({ ...study, horses: study.horses.map((stay) => ({ ...stay, yardId: "Low" })) });
  expect(answer.kind === "answer" && answer.tables.flatMap(({ columns }) => columns.map(({ name }) => name))).not.toContain(
    "yard",
  );
});

test("row order does not matter", () => {
  expect(dueAndOver(reversed(study))).toEqual(dueAndOver(study));
});

test("nobody there, or nobody with a plan: no list, and why", () => {
  expect(dueAndOver(studyOf())).toMatchObject({
    kind: "not_enough_data",
    reason: "No horse has been recorded, or all have left.",
  });
  const planless = { ...study, horses: study.horses.map((stay) => ({ ...stay, plannedIntervalDays: null })) };
  expect(dueAndOver(planless)).toMatchObject({
    kind: "not_enough_data",
    reason: "None of 8 horses has both a routine visit and an agreed interval.",
  });
});
