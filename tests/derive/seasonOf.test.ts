import { expect, test } from "vitest";
import { seasonOf } from "../../src/derive/seasonOf.js";

test("seasons begin with December, March, June and September", () => {
  const days = ["2025-02-28", "2025-03-01", "2025-05-31", "2025-06-01", "2025-08-31", "2025-09-01", "2025-11-30", "2025-12-01"];
  expect(days.map((day) => seasonOf(day))).toEqual([
    ...["winter", "spring", "spring", "summer"],
    ...["summer", "autumn", "autumn", "winter"],
  ]);
  expect(seasonOf("2025-01-15", { hemisphere: "south" })).toBe("summer");
  expect(seasonOf("2025-04-15", { hemisphere: "south" })).toBe("autumn");
  expect(() => seasonOf("2025-13-01")).toThrow("no calendar day");
});
