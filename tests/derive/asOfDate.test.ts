import { expect, test } from "vitest";
import { asOfDate } from "../../src/derive/asOfDate.js";
import { defaultSettings } from "../../src/study/defaultSettings.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";

const visits = [
  footVisit({ visitDate: "2025-03-01" }),
  footVisit({ visitDate: "2025-11-30" }),
  footVisit({ visitDate: "2025-06-01" }),
];

test("the day of the last visit, whatever the order of the rows", () => {
  expect(asOfDate(studyOf({ visits }))).toBe("2025-11-30");
});

test("a day that was set wins, before or after the last visit", () => {
  expect(asOfDate(studyOf({ visits, settings: { ...defaultSettings, asOf: "2025-09-01" } }))).toBe("2025-09-01");
});

test("neither: null", () => {
  expect(asOfDate(studyOf())).toBeNull();
});
