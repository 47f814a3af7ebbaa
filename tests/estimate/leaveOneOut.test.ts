import { expect, test } from "vitest";
import { effectOfExposure } from "../../src/estimate/effectOfExposure.js";
import { leaveOneOut } from "../../src/estimate/leaveOneOut.js";
import { referenceRows } from "./reference.js";

const rows = referenceRows("regression/feet.csv");
const model = { rows, outcome: "thrush", exposure: "wet", per: 10, groups: ["yard", "horse"], method: "gee" } as const;

test("all first, then without each yard by name, each the effect of the others", () => {
  const found = leaveOneOut(model);
  const yards = [...new Set(rows.map((row) => String(row["yard"])))].sort();
  expect(found.map(({ without }) => without)).toEqual([null, ...yards]);
  expect(found[0]!.estimate).toBe(effectOfExposure(model).estimate);
  const others = rows.filter((row) => row["yard"] !== "Y03");
  expect(found[3]!.estimate).toBe(effectOfExposure({ ...model, rows: others }).estimate);
  expect(found.reduce((sum, { n }) => sum + n!, 0)).toBe(rows.length * yards.length);
});

test("a yard that alone carries the comparison leaves none, and the reason", () => {
  const carried = rows.map((row) => ({ ...row, wet: row["yard"] === "Y03" ? row["wet"]! : 20 }));
  expect(leaveOneOut({ ...model, rows: carried })[3]!.refused).toBe("collinear");
});
