import { expect, test } from "vitest";
import { thrushChanges } from "../../src/derive/thrushChanges.js";
import { footCases } from "./footCases.js";

test("from one graded visit of a foot to the next", () => {
  const rows = thrushChanges(
    footCases([
      "2025-05-19 A LF 0",
      "2025-01-06 A LF 0",
      "2025-02-10 A LF 0",
      "2025-03-17 A LF 2",
      "2025-04-14 A LF 1",
      "2025-03-17 A RF 3",
      "2025-03-17 B LF 0",
    ]),
  );
  expect(rows.map((row) => [row.from, row.to, row.days, row.gradeFrom, row.gradeTo, row.change])).toEqual([
    ["2025-01-06", "2025-02-10", 35, 0, 0, "clear"],
    ["2025-02-10", "2025-03-17", 35, 0, 2, "new"],
    ["2025-03-17", "2025-04-14", 28, 2, 1, "still"],
    ["2025-04-14", "2025-05-19", 35, 1, 0, "cleared"],
  ]);
});

test("a visit without a grade is passed over, a specimen has no history", () => {
  const rows = thrushChanges(
    footCases(["2025-01-06 A LF 0", "2025-02-10 A LF -", "2025-03-17 A LF 1", "2025-01-06 A F 0", "2025-02-10 A F 1"]),
  );
  expect(rows).toMatchObject([{ from: "2025-01-06", to: "2025-03-17", days: 70, change: "new", end: "fore" }]);
});
