import { expect, test } from "vitest";
import { atLastVisit } from "../../src/derive/atLastVisit.js";
import { footCases } from "./footCases.js";

const rows = footCases(["2025-01-06 A LF 0", "2025-02-10 A LF -", "2025-02-10 A RF -", "2025-01-20 B LF 1", "2025-01-06 B LF 0"]);
const kept = (asOf?: string) => atLastVisit(rows, asOf).map((row) => `${row.visitDate} ${row.horseId} ${row.foot}`);

test("all rows of each horse's last day, graded or not", () => {
  expect(kept()).toEqual(["2025-01-20 B LF", "2025-02-10 A LF", "2025-02-10 A RF"]);
});

test("visits after the day of the review do not count", () => {
  expect(kept("2025-02-09")).toEqual(["2025-01-06 A LF", "2025-01-20 B LF"]);
  expect(kept("2025-02-10")).toEqual(kept());
  expect(kept("2025-01-05")).toEqual([]);
});
