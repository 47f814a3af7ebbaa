import { expect, test } from "vitest";
import { yardChanges } from "../../src/answer/yardChanges.js";
import { answered } from "./climateAnswer.js";
import { seasonHerd } from "./seasonHerd.js";

const herd = seasonHerd({ visitGapDays: 45, horsesPerYard: 6 });
const change = (yardId: string, changedOn: string) => ({ yardId, changedOn, what: "new bedding", file: "changes.csv", line: 2 });

test("a yard that goes clear on the day is found; a yard that changed is no control", () => {
  const visits = herd.visits.map((row) =>
    row.horseId.startsWith("yard 3 ") && row.visitDate >= "2024-01-10"
      ? { ...row, thrushGrade: 0 }
      : { ...row, thrushGrade: row.horseId.startsWith("yard 3 ") ? 2 : row.thrushGrade },
  );
  const study = { ...herd, visits, changes: [change("yard 3", "2024-01-10"), change("yard 5", "2024-01-10")] };
  const { tables, sentence } = answered(yardChanges(study));
  expect(sentence).toContain("yard 3, after 10 Jan 2024: thrush fell more than at the others, −");
  const [found] = tables[0]!.rows;
  expect(Number(found!["estimate"])).toBeLessThan(-0.7);
  expect(Number(found!["upper"])).toBeLessThan(0);
  // Of nine yards without a change, those seen in three of its months before and after.
  expect(Number(found!["controls"])).toBeGreaterThan(2);
  expect(Number(found!["controls"])).toBeLessThanOrEqual(9);
});

test("nothing before the day: it says that it cannot tell", () => {
  const { tables, sentence } = answered(yardChanges({ ...herd, changes: [change("yard 1", "2020-01-01")] }));
  expect(sentence).toContain("cannot tell");
  expect(tables[0]!.rows[0]).toMatchObject({ estimate: null });
  expect(String(tables[0]!.rows[0]!["note"])).toMatch(/^Cannot tell\. The yard was seen before and after the change in 0 months/);
});

test("no dated change", () => {
  expect(yardChanges(herd).kind).toBe("not_enough_data");
});
