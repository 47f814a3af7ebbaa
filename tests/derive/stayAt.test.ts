import { expect, test } from "vitest";
import { stayAt } from "../../src/derive/stayAt.js";
import { horseStay } from "../study.js";

const moved = [
  horseStay({ horseId: "A", yardId: "Low", leftOn: "2025-05-31" }),
  horseStay({ horseId: "A", yardId: "High", joinedOn: "2025-06-02" }),
  horseStay({ horseId: "B", yardId: "Low" }),
];
const yardAt = (date: string, stays = moved) => stayAt(stays, "A", date)?.yardId ?? null;

test("first and last day belong to the stay; between two stays the horse is nowhere", () => {
  expect(["2020-01-01", "2025-05-31", "2025-06-01", "2025-06-02", "2030-01-01"].map((date) => yardAt(date))).toEqual([
    "Low",
    "Low",
    null,
    "High",
    "High",
  ]);
});

test("on a day that two stays share, the later one counts, in either order of the rows", () => {
  const sameDay = [
    horseStay({ horseId: "A", yardId: "Low", joinedOn: "2025-01-01", leftOn: "2025-06-02" }),
    horseStay({ horseId: "A", yardId: "High", joinedOn: "2025-06-02" }),
  ];
  expect(yardAt("2025-06-02", sameDay)).toBe("High");
  expect(yardAt("2025-06-02", [...sameDay].reverse())).toBe("High");
});

test("a horse without a stay has none", () => {
  expect(stayAt(moved, "C", "2025-05-31")).toBeNull();
});
