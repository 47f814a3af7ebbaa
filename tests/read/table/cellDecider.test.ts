import { expect, test } from "vitest";
import * as zod from "zod";
import { cellDecider } from "../../../src/read/table/cellDecider.js";
import { horseColumns } from "../../../src/study/horseColumns.js";
import { visitColumns } from "../../../src/study/visitColumns.js";
import { weatherColumns } from "../../../src/study/weatherColumns.js";

const columns = [...visitColumns, ...horseColumns, ...weatherColumns];

function decider(name: string) {
  const column = columns.find((each) => each.name === name);
  if (column === undefined) throw new Error(name);
  return cellDecider(zod, column);
}

function decided(name: string, text: string): string {
  const { value, fault } = decider(name).decide(text);
  return fault === null ? JSON.stringify(value) : `${JSON.stringify(value)} ${fault.code} ${fault.severity}`;
}

test("a bad cell costs the cell where it may be empty, and the row where it may not", () => {
  expect(decided("thrush_grade", "7")).toBe("null out_of_range cell_blanked");
  expect(decided("crack_site", "middle")).toBe("null unknown_code cell_blanked");
  expect(decided("hoof_width_mm", "900")).toBe("null out_of_range cell_blanked");
  expect(decided("thrush_grade", "1.5")).toBe("null not_whole cell_blanked");
  expect(decided("abscess", "maybe")).toBe("null bad_yes_no cell_blanked");
  expect(decided("visit_date", "5/3/2024")).toBe("null bad_date set_aside");
  expect(decided("horse_id", " ")).toBe("null required_empty set_aside");
  expect(decided("foot", "LG")).toBe("null unknown_foot set_aside");
  expect(decided("species", "cow")).toBe("null not_equine set_aside");
});

test("outside the usual range a value is kept with a warning; the bounds are usual", () => {
  expect(decided("hoof_width_mm", "90")).toBe("90");
  expect(decided("hoof_width_mm", "170")).toBe("170");
  expect(decided("hoof_width_mm", "89.9")).toBe("89.9 unusual_value warning");
  expect(decided("hoof_width_mm", "270")).toBe("270 unusual_value warning");
});

test("empty is null and nothing to say; blanks around a value are nothing", () => {
  expect(decided("thrush_grade", "")).toBe("null");
  expect(decided("thrush_grade", " \t\u00a0")).toBe("null");
  expect(decided("thrush_grade", " 2 ")).toBe("2");
  expect(decided("note", "  wet  ")).toBe('"wet"');
});

test("words and codes that stand for missing are missing with a reason, but free text keeps them", () => {
  for (const word of ["NA", "NaN", "null", "-"]) expect(decided("hoof_width_mm", word)).toBe("null missing_word cell_blanked");
  expect(decided("horse_id", "NA")).toBe("null missing_word set_aside");
  expect(decided("note", "NA")).toBe('"NA"');
  for (const code of ["-9", "-99", "-999", "-9999", "-99.9", "-999.0"])
    expect(decided("rain_mm", code), code).toBe("null missing_code cell_blanked");
  expect(decided("rain_mm", "-3")).toBe("null out_of_range cell_blanked");
});

test("the words of a fault say what was found and what to do", () => {
  const fault = (name: string, text: string) => decider(name).decide(text).fault;
  expect(fault("cleft_depth_mm", "12,5")).toMatchObject({
    found: '"12,5" is not a number; the cell counts as empty',
    hint: 'Write a decimal point, or say "decimal": "," in study.json.',
  });
  expect(fault("cleft_depth_mm", "12 mm")?.hint).toBe("Write a number alone, without its unit (mm).");
  expect(fault("bars", "flat")?.hint).toBe('Use level, overgrown, folded. Or say under "words" in study.json what it means.');
  expect(fault("crack_site", "x")?.hint).toContain("several are separated by a semicolon");
  expect(fault("foot", "LF outer claw")?.hint).toContain("cloven foot");
  expect(fault("species", "hrose")?.hint).toContain('Was "horse" meant?');
  expect(fault("hoof_width_mm", "900")?.found).toContain("only 30 to 270 mm is believed");
});

test("the same text gives the same decision object while it is remembered, and the memory has an end", () => {
  const { decide, texts } = decider("note");
  expect(decide("wet")).toBe(decide("wet"));
  for (let index = 0; index < 60_000; index++) decide(`note ${String(index)}`);
  expect(texts.size).toBe(50_000);
  expect(decide("note 59999").value).toBe("note 59999");
  const long = "x".repeat(1000);
  expect(decide(long)).not.toBe(decide(long));
});
