import fc from "fast-check";
import { expect, test } from "vitest";
import * as zod from "zod";
import { cellSchema } from "../../../src/read/table/cellSchema.js";
import { dateOfDay } from "../../../src/study/dateOfDay.js";
import { fileTables } from "../../../src/study/fileTables.js";
import { horseColumns } from "../../../src/study/horseColumns.js";
import { visitColumns } from "../../../src/study/visitColumns.js";

const columns = [...visitColumns, ...horseColumns];

function read(name: string, text: string): unknown {
  const column = columns.find((each) => each.name === name);
  if (column === undefined) throw new Error(name);
  const result = cellSchema(zod, column).safeParse(text);
  return result.success ? result.data : `!${result.error.issues[0]?.code ?? ""}`;
}

test("dates are real calendar days in one order", () => {
  expect(read("visit_date", "2024-02-29")).toBe("2024-02-29");
  for (const text of ["2023-02-29", "29-02-2024", "2024-2-29", "2024-02-29T00:00", "20240229", "0999-01-01"])
    expect(read("visit_date", text), text).toBe("!custom");
});

test("every day that can be written is read back", () => {
  fc.assert(
    fc.property(fc.integer({ min: -300_000, max: 2_900_000 }), (day) => {
      expect(read("visit_date", dateOfDay(day))).toBe(dateOfDay(day));
    }),
  );
});

test("numbers have a point and no unit, and lie where they are believed", () => {
  expect(["12.5", "+3", ".5", "7.", "1e1"].map((text) => read("cleft_depth_mm", text))).toEqual([12.5, 3, 0.5, 7, 10]);
  for (const text of ["12,5", "12 mm", "0x10", "1_0", "Infinity", "NaN", "--1", "1e", "٣"])
    expect(read("cleft_depth_mm", text), text).toBe("!invalid_format");
  // The believed range is inclusive: 0 to 60 mm.
  expect([read("cleft_depth_mm", "0"), read("cleft_depth_mm", "60")]).toEqual([0, 60]);
  expect([read("cleft_depth_mm", "-0.1"), read("cleft_depth_mm", "60.1"), read("cleft_depth_mm", "1e999")]).toEqual([
    "!too_small",
    "!too_big",
    "!invalid_type",
  ]);
});

test("whole numbers may be written with a point, but must be whole", () => {
  expect([read("thrush_grade", "2"), read("thrush_grade", "2.0")]).toEqual([2, 2]);
  expect([read("thrush_grade", "1.5"), read("thrush_grade", "4"), read("thrush_grade", "-1")]).toEqual([
    "!invalid_type",
    "!too_big",
    "!too_small",
  ]);
});

test("codes in any case and with spaces; several with semicolons, each once", () => {
  expect(read("white_line", "Stretched")).toBe("stretched");
  expect(read("mark_kind", "Abscess track")).toBe("abscess_track");
  expect(read("bars", "flat")).toBe("!invalid_value");
  expect(read("thrush_site", "central sulcus; Medial_groove;central-sulcus;")).toEqual(["central_sulcus", "medial_groove"]);
  expect(read("crack_site", "toe;middle")).toBe("!invalid_value");
  expect(read("crack_site", ";")).toBe("!too_small");
});

test("yes and no in eight ways", () => {
  expect(["yes", "NO", "True", "false", "y", "N", "1", "0"].map((text) => read("abscess", text))).toEqual([
    true,
    false,
    true,
    false,
    true,
    false,
    true,
    false,
  ]);
  expect(read("abscess", "x")).toBe("!invalid_value");
});

test("an id matches in every file, however its accents and spaces are written", () => {
  expect(read("horse_id", "E\u0301clair  2")).toBe("\u00c9clair 2");
  expect(read("horse_id", "x".repeat(101))).toBe("!too_big");
});

test("every column of every file has a schema that takes what its table allows", () => {
  for (const { columns: table } of fileTables) {
    for (const column of table) {
      const schema = cellSchema(zod, column);
      for (const value of column.values ?? []) expect(schema.safeParse(value).success, `${column.name} ${value}`).toBe(true);
      for (const value of column.hard ?? []) expect(schema.safeParse(String(value)).data, column.name).toBe(value);
    }
  }
});
