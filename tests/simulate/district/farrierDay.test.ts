import { expect, test } from "vitest";
import { farrierDay } from "../../../src/simulate/district/farrierDay.js";
import { dateOfDay } from "../../../src/study/dateOfDay.js";
import { dayNumber } from "../../../src/study/dayNumber.js";

const at = (yardId: string, wanted: string, earliest = "2025-01-01") =>
  dateOfDay(farrierDay(yardId, dayNumber(wanted)!, dayNumber(earliest)!));

// 6 January 2025 was a Monday. Sallowmere: Monday and Thursday; Oddley: Wednesday.
test("the nearest day of the yard, the later of two", () => {
  expect(at("Sallowmere", "2025-01-06")).toBe("2025-01-06");
  expect(at("Sallowmere", "2025-01-08")).toBe("2025-01-09");
  expect(at("Sallowmere", "2025-01-07")).toBe("2025-01-06");
  expect(at("Oddley", "2025-01-11")).toBe("2025-01-08");
  expect(at("Oddley", "2025-01-11", "2025-01-09")).toBe("2025-01-15");
});

test("nobody comes over the turn of the year", () => {
  expect(at("Oddley", "2025-12-31")).toBe("2026-01-07");
  expect(at("Oddley", "2025-12-24")).toBe("2025-12-17");
});
