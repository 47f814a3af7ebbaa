import { expect, test } from "vitest";
import { gaugeGaps } from "../../src/derive/gaugeGaps.js";
import { gaugeDay } from "../study.js";
import { referenceRain } from "./weatherReferences.js";

// By hand: 10 days; the 2nd, 3rd, 5th (marked), 7th (no row), 8th (no row) and 9th (total) have no reading.
test("where a record begins, ends and has holes", () => {
  const day = (date: number, rainMm: number | null, flag: "trace" | "accumulated" | "missing" | null = null) =>
    gaugeDay({ gaugeId: "B", date: `2025-01-${String(date).padStart(2, "0")}`, rainMm, flag });
  const rows = [
    day(10, 1),
    day(1, 0),
    day(3, null),
    day(4, 0, "trace"),
    day(5, null, "missing"),
    day(6, 2),
    day(9, null, "accumulated"),
  ];
  const only = gaugeDay({ gaugeId: "A", date: "2025-01-04", rainMm: 3, tempMinC: 1, tempMaxC: 5, humidityPct: 90 });
  const low = gaugeDay({ gaugeId: "A", date: "2025-01-05", rainMm: 3, tempMinC: 1, dewPointC: 0 });
  expect(gaugeGaps([...rows, only, low])).toEqual([
    {
      ...{
        gaugeId: "A",
        first: "2025-01-04",
        last: "2025-01-05",
        days: 2,
        daysMissing: 0,
        longestGapDays: 0,
        longestGapFrom: null,
      },
      ...{ accumulated: 0, trace: 0, markedMissing: 0, withTemperatures: 1, withDewPoint: 2 },
    },
    {
      ...{
        gaugeId: "B",
        first: "2025-01-01",
        last: "2025-01-10",
        days: 10,
        daysMissing: 6,
        longestGapDays: 3,
        longestGapFrom: "2025-01-07",
      },
      ...{ accumulated: 1, trace: 1, markedMissing: 1, withTemperatures: 0, withDewPoint: 0 },
    },
  ]);
  expect(gaugeGaps([])).toEqual([]);
});

// The gaps were made in tests/reference/weather/references.R: 3 single or paired days, 13 days and 16 days.
test("the gaps that were put into a record are found", () => {
  expect(gaugeGaps(referenceRain())).toMatchObject([
    { first: "2019-07-01", last: "2024-06-30", days: 1827, daysMissing: 32, longestGapDays: 16, longestGapFrom: "2023-09-01" },
  ]);
});

test("of gaps of one length the earliest is named", () => {
  const rows = ["2025-01-01", "2025-01-03", "2025-01-05"].map((date) => gaugeDay({ gaugeId: "G", date, rainMm: 1 }));
  expect(gaugeGaps(rows)).toMatchObject([{ daysMissing: 2, longestGapDays: 1, longestGapFrom: "2025-01-02" }]);
});
