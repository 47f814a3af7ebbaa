import { expect, test } from "vitest";
import { shoeLives } from "../../src/derive/shoeLives.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

const horses = [horseStay({ horseId: "A", yardId: "Low", shod: "all" })];
const lives = (visits: readonly FootVisit[]) => shoeLives(studyOf({ visits, horses }));
const at = (
  visitDate: string,
  shoeState: FootVisit["shoeState"],
  workDone: FootVisit["workDone"],
  cells: Partial<FootVisit> = {},
) => footVisit({ visitDate, shoeState, workDone, ...cells });

test("renewed while on: censored; found lost: an event with the day it was last seen on", () => {
  const rows = lives([
    at("2025-01-06", "worn", "shoe"),
    at("2025-02-17", "sprung", "reset"),
    at("2025-03-03", "tight", "none"),
    at("2025-03-10", "lost", "shoe"),
    at("2025-04-21", "tight", "shoe"),
  ]);
  expect(rows).toMatchObject([
    { from: "2025-01-06", to: "2025-02-17", days: 42, lost: false, seenOn: "2025-02-17", yardId: "Low", end: "fore" },
    { from: "2025-02-17", to: "2025-03-10", days: 21, lost: true, seenOn: "2025-03-03" },
    { from: "2025-03-10", to: "2025-04-21", days: 42, lost: false },
  ]);
});

test("a visit that does not say the state of the shoe tells nothing about it", () => {
  const rows = lives([at("2025-01-06", "tight", "shoe"), at("2025-01-20", null, null), at("2025-02-17", "lost", "none")]);
  expect(rows).toMatchObject([{ from: "2025-01-06", to: "2025-02-17", lost: true, seenOn: "2025-01-06" }]);
});

test("renewed without a word about the old shoe: no more is known than when it was last seen", () => {
  const rows = lives([at("2025-01-06", "tight", "shoe"), at("2025-01-20", "tight", "none"), at("2025-02-17", null, "shoe")]);
  expect(rows).toMatchObject([{ from: "2025-01-06", to: "2025-01-20", lost: false }]);
});

test("taken off for good is censored, and a bare foot has no shoe to lose", () => {
  const rows = lives([at("2025-01-06", "tight", "shoe"), at("2025-02-17", "tight", "trim"), at("2025-03-31", "lost", "trim")]);
  expect(rows).toMatchObject([{ from: "2025-01-06", to: "2025-02-17", lost: false }]);
  expect(lives([at("2025-01-06", "bare", "trim"), at("2025-02-17", "bare", "trim")])).toEqual([]);
});

test("never seen again: no row; each foot has its own shoes", () => {
  const rows = lives([at("2025-01-06", "tight", "shoe"), at("2025-02-17", "lost", "shoe", { foot: "RH" })]);
  expect(rows).toEqual([]);
});
