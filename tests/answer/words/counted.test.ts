import { expect, test } from "vitest";
import { counted } from "../../../src/answer/words/counted.js";

test("number and noun agree", () => {
  expect(counted(1, "horse")).toBe("1 horse");
  expect(counted(2, "horse")).toBe("2 horses");
  expect(counted(0, "horse")).toBe("no horses");
  expect(counted(1, "foot", "feet")).toBe("1 foot");
  expect(counted(12, "foot", "feet")).toBe("12 feet");
});

test("thousands are parted", () => {
  expect(counted(1204, "row")).toBe("1,204 rows");
  expect(counted(1000000, "row")).toBe("1,000,000 rows");
  expect(counted(999, "row")).toBe("999 rows");
});
