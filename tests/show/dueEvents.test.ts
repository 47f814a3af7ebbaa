import { expect, test } from "vitest";
import { dueEvents } from "../../src/show/dueEvents.js";
import { dueHorses } from "../answer/dueHorses.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";

const study = dueHorses();

test("one event a horse with a date: on its day, or on the day of the list when that is past", () => {
  const events = dueEvents(study);
  expect(events.map(({ summary, date, location }) => [summary, date, location])).toEqual([
    ["Over: Ash", "2025-03-01", "Low"],
    ["Past its date: Briar", "2025-03-01", "Low"],
    ["Due: Cob", "2025-03-01", "Low"],
    ["Due: Dun", "2025-03-03", "High"],
    ["Due: Elm", "2025-03-10", "High"],
    ["Due: Fern", "2025-03-30", "High"],
  ]);
  expect(events[0]!.description).toBe(
    "Was due on 17 February 2025, 12 days before this list. 42 days after the routine visit of 6 January 2025. Describes the diary; no advice to change an interval.",
  );
  expect(new Set(events.map(({ uid }) => uid)).size).toBe(6);
});

test("written again after a visit, the event of a horse keeps its name, moves on and outranks the old one", () => {
  const before = dueEvents(study).find(({ summary }) => summary.endsWith("Dun"))!;
  const after = dueEvents({
    ...study,
    visits: [...study.visits, footVisit({ horseId: "Dun", visitDate: "2025-03-04" })],
    settings: { ...study.settings, asOf: "2025-03-04" },
  }).find(({ summary }) => summary.endsWith("Dun"))!;
  expect(after.uid).toBe(before.uid);
  expect(after.date).toBe("2025-04-15");
  expect(after.sequence).toBeGreaterThan(before.sequence);
});

test("nothing without a day or a date", () => {
  expect(dueEvents(studyOf())).toEqual([]);
  expect(dueEvents({ ...study, visits: [] })).toEqual([]);
});
