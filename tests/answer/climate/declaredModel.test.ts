import { expect, test } from "vitest";
import { declaredModel } from "../../../src/answer/climate/declaredModel.js";
import { seasonHerd } from "../seasonHerd.js";

test("visits of one month are counted as one", () => {
  const study = seasonHerd();
  const visits = study.visits.filter(({ visitDate }) => visitDate.slice(5, 7) === "06");
  expect(declaredModel({ ...study, visits })).toMatch(/^Visits with known rain lie in 1 month of the year;/);
});
