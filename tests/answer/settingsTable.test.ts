import { expect, test } from "vitest";
import { settingsTable } from "../../src/answer/settingsTable.js";
import { defaultSettings } from "../../src/study/defaultSettings.js";

test("every setting stands in it, in words", () => {
  const { rows } = settingsTable({ ...defaultSettings, gaugeDay: "starts_on_date", asOf: "2025-03-01" });
  expect(rows).toHaveLength(Object.keys(defaultSettings).length);
  const value = (setting: RegExp) => rows.find((row) => setting.test(String(row["setting"])))?.["value"];
  expect(value(/reading covers/)).toBe("the 24 hours from the morning of its date");
  expect(value(/Confidence level/)).toBe("95%");
  expect(value(/as of/)).toBe("2025-03-01");
});

test("only those that are named, in their usual order", () => {
  const { rows } = settingsTable(defaultSettings, ["asOf", "caseGrade"]);
  expect(rows.map((row) => row["setting"])).toEqual(["Thrush counts as a case from grade", "The review is made as of"]);
});

test("one day is one, and a level stands in full", () => {
  const { rows } = settingsTable(
    { ...defaultSettings, level: 0.999, toleranceDays: 1, rainWindowsDays: [1], exposurePer: 1, minimumHorses: 1 },
    ["level", "rainWindowsDays", "exposurePer", "toleranceDays", "minimumHorses"],
  );
  expect(rows.map(({ value }) => value)).toEqual(["99.9%", "1 day", "1 unit", "1 day of its date, either way", "1 horse"]);
});
