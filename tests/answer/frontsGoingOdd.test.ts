import { expect, test } from "vitest";
import { frontsGoingOdd } from "../../src/answer/frontsGoingOdd.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";

const days = ["2025-01-06", "2025-03-07", "2025-05-06", "2025-07-05", "2025-09-03", "2025-11-02"];
const noise = [0.3, -0.2, 0.1, -0.3, 0.2, -0.1];
// Ten horses; the near fore of h0 grows 7 degrees steeper than its fellow over the year, that of h1 comes back from 7 to 0.
const visits = Array.from({ length: 10 }, (_, k): FootVisit[] =>
  days.flatMap((visitDate, turn) => {
    const drift = k === 0 ? (7 * turn) / 5 : k === 1 ? 7 - (7 * turn) / 5 : 0;
    const cells = { horseId: `h${k}`, visitDate, stage: "after_trim" } as const;
    return [
      footVisit({ ...cells, foot: "LF", toeAngleDeg: 50 + drift + noise[(turn + k) % 6]! }),
      footVisit({ ...cells, foot: "RF", toeAngleDeg: 50 }),
    ];
  }),
).flat();
const twice = Array.from({ length: 10 }, (_, k): FootVisit[] => [
  footVisit({ horseId: `h${k}`, foot: "LH", visitDate: "2025-01-06", stage: "before_trim", observerId: "K", toeAngleDeg: 50 }),
  footVisit({
    horseId: `h${k}`,
    foot: "LH",
    visitDate: "2025-01-06",
    stage: "single",
    observerId: "M",
    toeAngleDeg: k % 2 === 0 ? 50.5 : 49.5,
  }),
]).flat();

test("the pair that drifts apart is named, the one that comes together is not", () => {
  const answer = frontsGoingOdd(studyOf({ visits: [...visits, ...twice] }));
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.sentence).toBe(
    "Measured last, 1 of 10 pairs of front feet differed by more than 5 degrees: h0. Growing apart: h0.",
  );
  const [first] = answer.tables[0]!.rows;
  expect(first).toMatchObject({ horseId: "h0", apart: "yes", times: 6 });
  const back = answer.tables[0]!.rows.find(({ horseId }) => horseId === "h1")!;
  expect(Number(back["upper"])).toBeLessThan(0);
  expect(back["apart"]).toBe("no");
  expect(answer.tables[1]!.rows.map(({ threshold, pairs }) => [threshold, pairs])).toEqual([[5, 1], [1.5, 1]]); // prettier-ignore
  expect(answer.charts).toHaveLength(1);
});

test("error of reading unknown, no toe angles", () => {
  const answer = frontsGoingOdd(studyOf({ visits }));
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.sentence).toContain("so no pair is said to grow apart");
  expect(frontsGoingOdd(studyOf({ visits: [footVisit({ toeAngleDeg: 50 })] }))).toMatchObject({ kind: "not_enough_data" });
});

test("readings of another stage are not pooled, though they are later", () => {
  const before = visits
    .filter(({ horseId }) => horseId < "h8")
    .map((visit): FootVisit => ({
      ...visit,
      visitDate: visit.visitDate.replace("2025", "2026"),
      stage: "before_trim",
      toeAngleDeg: visit.foot === "LF" ? 60 : 50,
    }));
  const [plain, mixed] = [visits, [...visits, ...before]].map((rows) => frontsGoingOdd(studyOf({ visits: [...rows, ...twice] })));
  if (plain!.kind !== "answer" || mixed!.kind !== "answer") throw new Error("no answer");
  expect(mixed!.sentence).toBe(plain!.sentence);
  expect(mixed!.tables).toEqual(plain!.tables);
});
