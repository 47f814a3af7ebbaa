import { expect, test } from "vitest";
import { animalWords } from "../../../src/read/otherAnimals/animalWords.js";

test("words of a cloven foot are found in a remark, whatever their case", () => {
  expect(animalWords("outer CLAW overgrown", "claw")).toBe("claw");
  expect(animalWords("interdigital swelling", "claw")).toBe("interdigital");
  expect(animalWords("dew-claws long", "claw")).toBe("dew-claws");
  expect(animalWords("heifer from the lower herd", "claw")).toBe("heifer");
});

test("words of other animals are found in a type", () => {
  expect(animalWords("dairy cow", "kind")).toBe("cow");
  expect(animalWords("Suckler calf", "kind")).toBe("calf");
  expect(animalWords("bull terrier", "kind")).toBe("bull");
});

test("words that horse people use of horses are passed over", () => {
  for (const remark of [
    "cow-hocked behind",
    "cow pony",
    "clawed at the door",
    "field shared with cows",
    "lives by the cowshed",
  ]) {
    expect(animalWords(remark, "claw"), remark).toBeNull();
  }
  for (const type of ["cow horse", "calf-kneed cob", "ewe neck", "steer wrestling horse", "oxer jumper"]) {
    expect(animalWords(type, "kind"), type).toBeNull();
  }
  expect(animalWords(null, "kind")).toBeNull();
});
