import { expect, test } from "vitest";
import { byVisit } from "../../src/derive/byVisit.js";

test("by day, then by horse in code order", () => {
  const rows = ["2025-01-02 A", "2025-01-01 b", "2025-01-01 B", "2025-01-01 Á"].map((row) => {
    const [visitDate = "", horseId = ""] = row.split(" ");
    return { visitDate, horseId };
  });
  expect(rows.sort(byVisit).map((row) => row.horseId)).toEqual(["B", "b", "Á", "A"]);
  expect(byVisit(rows[0]!, rows[0]!)).toBe(0);
});
