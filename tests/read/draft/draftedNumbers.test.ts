import { expect, test } from "vitest";
import { draftedNumbers } from "../../../src/read/draft/draftedNumbers.js";
import { horseColumns } from "../../../src/study/horseColumns.js";
import { visitColumns } from "../../../src/study/visitColumns.js";

const columnOf = (name: string) => {
  const column = [...visitColumns, ...horseColumns].find((each) => each.name === name);
  if (column === undefined) throw new Error(name);
  return column;
};
const drafted = (name: string, unit: string | null, ...texts: string[]) =>
  draftedNumbers(
    columnOf(name),
    texts.map((text, index) => ({ text, count: 1, place: `line ${String(index + 2)}` })),
    unit,
  );

test("a unit is proposed when header or cells name it, or when the numbers are usual as the table has them and in no other unit", () => {
  expect(drafted("hoof_width_mm", "in", "5", "5.1").mapping).toEqual({ unit: "in" });
  expect(drafted("hoof_width_mm", null, "12.4 cm", "12.7cm").mapping).toEqual({ unit: "cm" });
  expect(drafted("hoof_width_mm", null, "124", "130")).toMatchObject({
    mapping: {},
    evidence: ["mm: 2 of 2 numbers are usual so"],
    questions: [],
  });
});

test("a unit that only the numbers hint at is asked, with the hint", () => {
  expect(drafted("hoof_width_mm", null, "12.4", "13")).toMatchObject({
    mapping: { unit: null },
    questions: [{ path: "unit", question: expect.stringContaining("2 of 2 numbers are usual as cm") as string }],
  });
  // 25 may be a cleft in millimetres, or not: nothing in the numbers tells.
  expect(drafted("cleft_depth_mm", null, "5", "25").mapping).toEqual({ unit: null });
  expect(drafted("weight_kg", null, "420", "510")).toMatchObject({ mapping: { unit: null } }); // usual as kg and as lb
});

test("decimal comma: proposed when no number has a point, asked when some have", () => {
  expect(drafted("hoof_width_mm", "cm", "12,4").mapping).toEqual({ decimal: ",", unit: "cm" });
  expect(drafted("hoof_width_mm", "cm", "12,4", "12.5").mapping).toEqual({ decimal: null, unit: "cm" });
  expect(drafted("thrush_grade", null, "1", "2").mapping).toEqual({});
});
