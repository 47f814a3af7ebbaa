import fc from "fast-check";
import { expect, test } from "vitest";
import { dueDates } from "../../src/derive/dueDates.js";
import { defaultSettings } from "../../src/study/defaultSettings.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import type { HorseStay } from "../../src/study/HorseStay.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

const list = (visits: readonly FootVisit[], horses: readonly HorseStay[], asOf: string | null = "2025-03-01") =>
  dueDates(studyOf({ visits, horses, settings: { ...defaultSettings, asOf } }));
const seen = (horseId: string, visitDate: string, cells: Partial<FootVisit> = {}) => footVisit({ horseId, visitDate, ...cells });
const at = (horseId: string, cells: Partial<HorseStay> = {}) =>
  horseStay({ horseId, yardId: "Low", plannedIntervalDays: 42, ...cells });

// By hand, as of 1 March 2025, 7 days either way. 6 January + 42 is 17 February: 12 days over. 12 January: 23 February, 6 days past.
// 18 January: 1 March, the day itself. 20 January: 3 March, two days to come.
test("over, past within the tolerance, due that day, to come", () => {
  const days = { A: "2025-01-06", B: "2025-01-12", C: "2025-01-18", D: "2025-01-20" };
  const rows = list(
    Object.entries(days).map(([horse, day]) => seen(horse, day)),
    Object.keys(days).map((horse) => at(horse)),
  );
  expect(rows.map(({ horseId, state, dueOn, daysLeft }) => [horseId, state, dueOn, daysLeft])).toEqual([
    ["A", "over", "2025-02-17", -12],
    ["B", "past", "2025-02-23", -6],
    ["C", "to_come", "2025-03-01", 0],
    ["D", "to_come", "2025-03-03", 2],
  ]);
  expect(rows[0]).toEqual({
    horseId: "A",
    yardId: "Low",
    state: "over",
    lastRoutine: "2025-01-06",
    lastSeen: "2025-01-06",
    plannedDays: 42,
    dueOn: "2025-02-17",
    daysLeft: -12,
  });
});

test("past by the tolerance is not over, one day more is", () => {
  // 22 February + 7 is 1 March: seen on 11 January. 10 January is one day more.
  expect(list([seen("A", "2025-01-11")], [at("A")])[0]).toMatchObject({ daysLeft: -7, state: "past" });
  expect(list([seen("A", "2025-01-10")], [at("A")])[0]).toMatchObject({ daysLeft: -8, state: "over" });
});

test("a lost shoe does not move the date, and the interval agreed at the visit stands before that of the horse", () => {
  const rows = list(
    [seen("A", "2025-02-01", { nextIntervalDays: 35 }), seen("A", "2025-02-20", { reason: "lost_shoe" })],
    [at("A")],
  );
  expect(rows[0]).toMatchObject({ lastRoutine: "2025-02-01", lastSeen: "2025-02-20", plannedDays: 35, dueOn: "2025-03-08" });
});

test("what has not happened by that day is not used", () => {
  const rows = list([seen("A", "2025-01-20"), seen("A", "2025-03-02")], [at("A"), at("Later", { joinedOn: "2025-03-02" })]);
  expect(rows.map(({ horseId, dueOn }) => [horseId, dueOn])).toEqual([["A", "2025-03-03"]]);
});

test("a horse that left has no row, nor one whose last day it is; one that moved yard has, at its yard of that day", () => {
  const rows = list(
    ["Gone", "Going", "Moved"].map((horse) => seen(horse, "2025-01-20")),
    [
      at("Gone", { leftOn: "2025-02-10" }),
      at("Going", { leftOn: "2025-03-01" }),
      at("Moved", { leftOn: "2025-02-10" }),
      at("Moved", { yardId: "High", joinedOn: "2025-02-11" }),
    ],
  );
  expect(rows.map(({ horseId, yardId, dueOn }) => [horseId, yardId, dueOn])).toEqual([["Moved", "High", "2025-03-03"]]);
});

test("a horse that came back starts anew; one whose leaving is still to come does not", () => {
  const rows = list(
    [seen("Back", "2025-01-06"), seen("Leaves", "2025-01-20")],
    [at("Back", { leftOn: "2025-01-31" }), at("Back", { joinedOn: "2025-02-20" }), at("Leaves", { leftOn: "2025-03-20" })],
  );
  expect(rows).toMatchObject([
    { horseId: "Leaves", state: "to_come", lastSeen: "2025-01-20" },
    { horseId: "Back", state: "not_started", lastRoutine: null, lastSeen: null, dueOn: null, daysLeft: null },
  ]);
});

test("no plan, never seen, long out of contact, a detached foot", () => {
  const rows = list(
    [seen("Plain", "2025-02-01"), seen("Long", "2024-01-01"), footVisit({ horseId: "Shelf", foot: "F" })],
    [at("Plain", { plannedIntervalDays: null }), at("Long"), at("New"), at("Shelf", { plannedIntervalDays: null })],
  );
  expect(rows.map(({ horseId, state, lastSeen }) => [horseId, state, lastSeen])).toEqual([
    ["Long", "lost", "2024-01-01"],
    ["New", "not_started", null],
    ["Plain", "no_plan", "2025-02-01"],
  ]);
});

test("a horse that is in no list of stays is still there; without any visit or day there is no list", () => {
  expect(list([seen("A", "2025-02-01", { nextIntervalDays: 42 })], [])).toMatchObject([{ yardId: null, state: "to_come" }]);
  expect(list([], [at("A")], null)).toEqual([]);
  expect(list([], [at("A")])).toMatchObject([{ state: "not_started" }]);
});

test("order of rows does not matter; days left and date always agree", () => {
  const day = fc
    .integer({ min: 0, max: 500 })
    .map((n) => new Date(Date.UTC(2023, 11, 1) + n * 86_400_000).toISOString().slice(0, 10));
  const visit = fc.record({ horseId: fc.constantFrom("A", "B", "C"), visitDate: day });
  fc.assert(
    fc.property(fc.array(visit, { maxLength: 12 }), (cells) => {
      const visits = cells.map((cell) => footVisit(cell));
      const horses = [at("A"), at("B", { plannedIntervalDays: null })];
      const rows = list(visits, horses);
      expect(list([...visits].reverse(), [...horses].reverse())).toEqual(rows);
      for (const { dueOn, daysLeft } of rows)
        expect(daysLeft).toBe(dueOn === null ? null : (Date.parse(dueOn) - Date.parse("2025-03-01")) / 86_400_000);
    }),
  );
});
