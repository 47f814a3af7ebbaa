import { expect, test } from "vitest";
import { usualShape } from "../../src/answer/usualShape.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

// 21 horses, near fore 100, 102 … 140 mm wide and 100 mm long, so the percentiles are read off by hand; each was narrower before.
const visits = Array.from({ length: 21 }, (_, k): FootVisit[] => [
  footVisit({ horseId: `h${k}`, visitDate: "2025-01-06", stage: "after_trim", hoofWidthMm: 60, hoofLengthMm: 100 }),
  footVisit({ horseId: `h${k}`, visitDate: "2025-03-03", stage: "after_trim", hoofWidthMm: 100 + 2 * k, hoofLengthMm: 100 }),
]).flat();
const young = footVisit({ horseId: "foal", stage: "after_trim", hoofWidthMm: 50, hoofLengthMm: 100, visitDate: "2025-03-03" });

test("percentiles of the last reading, type 7 of Hyndman and Fan, each with limits; foals left out", () => {
  const answer = usualShape(studyOf({ visits: [...visits, young], horses: [horseStay({ horseId: "foal", birthYear: 2025 })] }));
  if (answer.kind !== "answer") throw new Error(answer.reason);
  // 0.025 x 20 = 0.5: halfway between the lowest two, 101 mm; and 139 mm above. Ranks 6 and 16 hold the median of 21 with 95 % or more.
  expect(answer.sentence).toContain("21 grown horses");
  expect(answer.tables[0]!.rows.find(({ title }) => title === "Shape index")).toMatchObject({
    end: "front",
    horses: 21,
    low: "1.01",
    median: "1.20",
    high: "1.39",
    medianLimits: "1.10 to 1.30",
  });
  expect(answer.charts[0]!.reading).toBe("Width / length: front feet from 1.01 to 1.39, median 1.20; 21 feet.");
  expect(answer.method).toMatchObject({ n: 21, missing: 1 });
});

test("few horses give no band", () => {
  expect(usualShape(studyOf({ visits: visits.slice(0, 8) }))).toMatchObject({
    kind: "not_enough_data",
    reason: "4 horses have feet measured at one stage; fewer than 5 give no band.",
  });
  expect(usualShape(studyOf())).toMatchObject({ kind: "not_enough_data" });
});

test("readings of another stage are not pooled, though they are later", () => {
  const before = visits
    .slice(0, 30)
    .map((visit): FootVisit => ({ ...visit, visitDate: "2025-05-05", stage: "before_trim", hoofWidthMm: 170 }));
  const [plain, mixed] = [visits, [...visits, ...before]].map((rows) => usualShape(studyOf({ visits: rows })));
  if (plain!.kind !== "answer" || mixed!.kind !== "answer") throw new Error("no answer");
  expect(mixed!.tables).toEqual(plain!.tables);
});
