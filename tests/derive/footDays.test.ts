import { expect, test } from "vitest";
import { footDays } from "../../src/derive/footDays.js";
import { footVisit } from "../footVisit.js";

test("days in order, rows of a day together, feet and horses apart", () => {
  const visits = [
    footVisit({ visitDate: "2025-03-01", stage: "after_trim" }),
    footVisit({ visitDate: "2025-01-01" }),
    footVisit({ visitDate: "2025-03-01", stage: "before_trim" }),
    footVisit({ visitDate: "2025-02-01", foot: "RF" }),
    footVisit({ visitDate: "2025-02-01", horseId: "B" }),
  ];
  const found = footDays(visits).map((history) =>
    history.map(({ visitDate, rows }) => `${rows[0]!.horseId} ${visitDate} ${rows.length}`),
  );
  expect(found).toEqual([["A 2025-01-01 1", "A 2025-03-01 2"], ["A 2025-02-01 1"], ["B 2025-02-01 1"]]);
});
