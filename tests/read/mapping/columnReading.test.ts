import { expect, test } from "vitest";
import { columnReading } from "../../../src/read/mapping/columnReading.js";
import type { ColumnMapping } from "../../../src/read/mapping/FileMapping.js";
import { horseColumns } from "../../../src/study/horseColumns.js";
import { visitColumns } from "../../../src/study/visitColumns.js";

function readingOf(name: string, mapping: ColumnMapping, file: Parameters<typeof columnReading>[2] = {}) {
  const column = [...visitColumns, ...horseColumns].find((each) => each.name === name);
  if (column === undefined) throw new Error(name);
  return columnReading(column, mapping, file);
}

test("a column that needs nothing is read as any file is", () => {
  expect(readingOf("visit_date", { header: "Datum" })).toBeNull();
  expect(readingOf("thrush_grade", {}, { dates: "day-month-year" })).toBeNull();
  expect(readingOf("visit_date", {}, { decimal: "," })).toBeNull();
});

test("what the file declares holds for its columns, and a column may say otherwise", () => {
  expect(readingOf("visit_date", {}, { dates: "day-month-year" })?.translate("7/3/2025")).toBe("2025-03-07");
  expect(readingOf("visit_date", { dates: "month-day-year" }, { dates: "day-month-year" })?.translate("7/3/2025")).toBe(
    "2025-07-03",
  );
  expect(readingOf("visit_date", { twoDigitYearsFrom: 2000 }, { dates: "day-month-year" })?.translate("7/3/25")).toBe(
    "2025-03-07",
  );
});

test("with a decimal comma a point is refused, since it could only part thousands", () => {
  const reading = readingOf("hoof_width_mm", {}, { decimal: "," });
  expect(reading?.translate("121,5")).toBe("121.5");
  expect(reading?.translate("121")).toBe("121");
  expect(reading?.translate("121.5")).toBeNull();
  expect(reading?.translate("1.121,5")).toBeNull();
  expect(reading?.translate("1,2,3")).toBeNull();
});

test("comma and unit together", () => {
  const reading = readingOf("hoof_width_mm", { unit: "cm" }, { decimal: "," });
  expect(reading?.translate("12,15")).toBe("121.5");
  expect(reading).toMatchObject({ converts: true, inWords: "decimal comma; cm, times 10" });
  expect(readingOf("hoof_width_mm", { unit: "mm" })).toMatchObject({ converts: false, inWords: "mm, as they are" });
});

test("words are found whatever their case and blanks, whole or among several", () => {
  const grade = readingOf("thrush_grade", { words: { "++": 2, "Bit  smelly": 1 }, missing: ["n.e."] });
  expect([...(grade?.words ?? [])]).toEqual([
    ["n.e.", null],
    ["++", "2"],
    ["bit smelly", "1"],
  ]);
  const sites = readingOf("thrush_site", { separator: "/", words: { CS: "central_sulcus", m: "medial_groove" }, missing: ["-"] });
  expect(sites?.translate("cs / M")).toBe("central_sulcus;medial_groove");
  expect(sites?.translate("lateral groove/CS")).toBe("lateral groove;central_sulcus");
  expect(sites?.translate("-/-")).toBe("");
});

test("what is done is said in words, with what to do where a text does not fit", () => {
  const date = readingOf("visit_date", { dates: "day-month-year" });
  expect(date?.inWords).toBe("day-month-year");
  expect(date?.hint).toContain('give "twoDigitYearsFrom"');
  expect(readingOf("visit_date", { dates: "day-month-year", twoDigitYearsFrom: 1950 })?.inWords).toBe(
    "day-month-year; years of two digits are 1950 to 2049",
  );
});
