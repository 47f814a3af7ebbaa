import { expect, test } from "vitest";
import { examination } from "../../src/derive/examination.js";
import { footVisit } from "../footVisit.js";

test("a yes or no decides", () => {
  expect(examination(footVisit({ examined: true }))).toBe("seen");
  expect(examination(footVisit({ examined: false, thrushGrade: 1 }))).toBe("not_seen");
});

test("without one, a finding counts as seen, a note or the shoe does not", () => {
  expect(examination(footVisit({ thrushGrade: 0 }))).toBe("seen");
  expect(examination(footVisit({ toeLengthMm: 84 }))).toBe("seen");
  expect(examination(footVisit({ note: "gone out to grass", shoeState: "tight", hornColour: "dark" }))).toBe("not_said");
  expect(examination(footVisit())).toBe("not_said");
});
