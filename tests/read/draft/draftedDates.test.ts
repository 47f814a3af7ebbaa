import { expect, test } from "vitest";
import { draftedDates } from "../../../src/read/draft/draftedDates.js";

const drafted = (...texts: string[]) =>
  draftedDates(texts.map((text, index) => ({ text, count: 1, place: `line ${String(index + 2)}` })));
const paths = (...texts: string[]) => drafted(...texts).questions.map(({ path }) => path);

test("an order is proposed when one text allows no other, and asked when none does", () => {
  expect(drafted("07/03/2025", "23/03/2025").mapping).toEqual({ dates: "day-month-year" });
  expect(drafted("07/03/2025", "03/23/2025").mapping).toEqual({ dates: "month-day-year" });
  expect(drafted("07/03/2025", "08/03/2025")).toMatchObject({ mapping: { dates: null }, evidence: [] });
  expect(paths("07/03/2025")).toEqual(["dates"]);
  expect(paths("07/03/25")).toEqual(["dates", "twoDigitYearsFrom"]);
  expect(paths("23/03/25", "x")).toEqual(["dates", "twoDigitYearsFrom"]); // 2023-03-25 is a day as well
  expect(paths("31/03/99")).toEqual(["twoDigitYearsFrom"]);
});

test("what can be read in one way only is proposed: the year first, the name of the month", () => {
  expect(drafted("2025-03-07").mapping).toEqual({});
  expect(drafted("2025/3/7").mapping).toEqual({ dates: "year-month-day" });
  expect(drafted("7 Mar 2025", "Mar 9 2025").mapping).toEqual({ dates: "day-month-year" });
});

test("texts that contradict each other are asked for", () => {
  expect(drafted("23/03/2025", "23/04/2025", "03/23/2025")).toMatchObject({ mapping: { dates: null } });
  expect(drafted("soon", "later")).toMatchObject({ mapping: { dates: null } });
});
