import { expect, test } from "vitest";
import { nearestName } from "../../src/study/nearestName.js";

const known = ["Copper", "Conker", "Ash", "Bramble Lane"];

test("case, spaces and hyphens are no difference", () => {
  expect(nearestName("bramble-lane", known)).toBe("Bramble Lane");
  expect(nearestName("ASH", known)).toBe("Ash");
});

test("a slip of the pen: a letter more, less, other, or two swapped", () => {
  expect(["Coppper", "Coper", "Copped", "Coppre", "Bramlbe Lne"].map((name) => nearestName(name, known))).toEqual([
    "Copper",
    "Copper",
    "Copper",
    "Copper",
    "Bramble Lane",
  ]);
});

test("the nearest wins, the first of equals", () => {
  expect(nearestName("Conkers", known)).toBe("Conker");
  expect(nearestName("Cat", ["Cab", "Car"])).toBe("Cab");
});

test("what is too far is not guessed, and short names need to be nearer", () => {
  expect(nearestName("Cooler", known)).toBe("Copper"); // two of six letters
  expect(nearestName("Cobbler", known)).toBeNull();
  expect(nearestName("As", known)).toBeNull();
  expect(nearestName("", known)).toBeNull();
  expect(nearestName("Ash", [])).toBeNull();
});
