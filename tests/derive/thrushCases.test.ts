import { expect, test } from "vitest";
import { thrushCases } from "../../src/derive/thrushCases.js";
import { defaultSettings } from "../../src/study/defaultSettings.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

const cases = (visits: readonly FootVisit[], caseGrade: 1 | 2 | 3 = 1) =>
  thrushCases(
    studyOf({
      visits,
      horses: [horseStay({ horseId: "A", yardId: "Low", shod: "bare" })],
      settings: { ...defaultSettings, caseGrade },
    }),
  );
const one = (cells: Partial<FootVisit>, caseGrade: 1 | 2 | 3 = 1) => cases([footVisit(cells)], caseGrade)[0]!;

test("the case grade of the settings decides", () => {
  const thrush = (caseGrade: 1 | 2 | 3) => [0, 1, 2, 3].map((thrushGrade) => one({ thrushGrade }, caseGrade).thrush);
  expect(thrush(1)).toEqual([false, true, true, true]);
  expect(thrush(2)).toEqual([false, false, true, true]);
  expect(thrush(3)).toEqual([false, false, false, true]);
});

test("no grade is no clear foot: null, with the reason", () => {
  const missing = (cells: Partial<FootVisit>) => {
    const { thrush, thrushGrade, missing: why } = one(cells);
    expect([thrush, thrushGrade]).toEqual([null, null]);
    return why;
  };
  expect(missing({ examined: false, notExaminedReason: "bandaged" })).toBe("not_examined");
  expect(missing({ examined: false, thrushGrade: 0 })).toBe("not_examined");
  expect(missing({ examined: true })).toBe("not_graded");
  expect(missing({ toeLengthMm: 84 })).toBe("not_graded");
  expect(missing({ note: "gone" })).toBe("not_said");
  expect(missing({ foot: "H", thrushGrade: 2 })).toBe("specimen");
  expect(one({ examined: false, notExaminedReason: "bandaged" }).notExaminedReason).toBe("bandaged");
});

test("rows before and after a trim are one look at the foot, the highest grade counting", () => {
  const rows = cases([
    footVisit({ stage: "after_trim", thrushGrade: 0, thrushSite: ["central_sulcus"] }),
    footVisit({ stage: "before_trim", thrushGrade: 2, thrushSite: ["central_sulcus", "medial_groove"], observerId: "K" }),
    footVisit({ stage: "after_trim", foot: "RF", examined: true }),
    footVisit({ stage: "before_trim", foot: "RF", thrushGrade: 0 }),
    footVisit({ stage: "before_trim", foot: "RH", examined: false }),
  ]);
  expect(rows.map((row) => [row.foot, row.thrushGrade, row.missing])).toEqual([
    ["LF", 2, null],
    ["RF", 0, null],
    ["RH", null, "not_examined"],
  ]);
  expect(rows[0]).toMatchObject({ thrushSite: ["central_sulcus", "medial_groove"], observerId: "K" });
});

test("keys for grouping", () => {
  expect(one({ visitDate: "2025-11-03", foot: "RH", thrushGrade: 1 })).toMatchObject({
    ...{ yardId: "Low", month: "2025-11", monthOfYear: 11, end: "hind", side: "right", shod: "bare", reason: "routine" },
  });
  expect(one({ horseId: "stranger", thrushGrade: 1 })).toMatchObject({ yardId: null, thrush: true });
});

test("rows come by day, horse and foot, whatever the order of the input", () => {
  const visits = [
    footVisit({ visitDate: "2025-02-03" }),
    footVisit({ foot: "RF" }),
    footVisit({ horseId: "B" }),
    footVisit({ foot: "LH" }),
  ];
  const keys = (rows: ReturnType<typeof cases>) => rows.map((row) => `${row.visitDate} ${row.horseId} ${row.foot}`);
  expect(keys(cases(visits))).toEqual(["2025-01-06 A LH", "2025-01-06 A RF", "2025-01-06 B LF", "2025-02-03 A LF"]);
  expect(cases([...visits].reverse())).toEqual(cases(visits));
});

test("a second observer of the same foot and day does not make it worse", () => {
  const first = footVisit({ stage: "before_trim", thrushGrade: 1, observerId: "K", thrushSite: ["central_sulcus"] });
  const second = footVisit({ stage: "single", thrushGrade: 2, observerId: "M", thrushSite: ["medial_groove"] });
  expect(cases([first, second])[0]).toMatchObject({ thrushGrade: 1, observerId: "K", thrushSite: ["central_sulcus"] });
  expect(cases([second, first])[0]).toMatchObject({ thrushGrade: 2, observerId: "M", thrushSite: ["medial_groove"] });
});

test("a row that was not graded does not take the place of one that was", () => {
  const shod = footVisit({ stage: "after_trim", toeLengthMm: 80, observerId: "M" });
  const graded = footVisit({ stage: "before_trim", thrushGrade: 1, observerId: "K" });
  expect(cases([shod, graded])[0]).toMatchObject({ thrushGrade: 1, observerId: "K", missing: null });
});
