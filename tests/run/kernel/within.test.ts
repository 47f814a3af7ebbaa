import { expect, test } from "vitest";
import { within } from "../../../src/run/kernel/within.js";

test("the value when it comes in time, null when it does not, the fault when it fails", async () => {
  expect(await within(1000, Promise.resolve("in time"))).toBe("in time");
  expect(await within(5, new Promise(() => undefined))).toBeNull();
  await expect(within(1000, Promise.reject(new Error("broken")))).rejects.toThrow("broken");
});
