import { expect, test } from "vitest";
import { horseVisits } from "../../src/derive/horseVisits.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";

const visits = [
  footVisit({ visitDate: "2025-02-17", foot: "RH", thrushGrade: 1, reason: "lame" }),
  footVisit({ foot: "LF", stage: "before_trim", thrushGrade: 1, thrushSite: ["central_sulcus"], observerId: "K" }),
  footVisit({ foot: "LF", stage: "after_trim", thrushGrade: 2, observerId: "K", toeLengthMm: 80 }),
  footVisit({ foot: "LF", thrushGrade: 3, observerId: "M" }),
  footVisit({ foot: "RF", examined: false, notExaminedReason: "bandaged", reason: null }),
  footVisit({ foot: "LH", reason: "lost_shoe" }),
  footVisit({ foot: "F", thrushGrade: 3 }),
];

test("a visit day holds its feet; rows of one foot are one look; a detached foot is none", () => {
  const days = horseVisits(studyOf({ visits }));
  expect(days.map(({ visitDate, reasons, feet }) => [visitDate, reasons, [...feet.keys()]])).toEqual([
    ["2025-01-06", ["routine", "lost_shoe"], ["LF", "RF", "LH"]],
    ["2025-02-17", ["lame"], ["RH"]],
  ]);
  const look = days[0]!.feet.get("LF")!;
  // The worst grade of the observer who is written first, as for every figure.
  expect(look).toMatchObject({ state: "seen", grade: 2, thrushSite: ["central_sulcus"] });
  expect(look.rows).toHaveLength(3);
  expect(days[0]!.feet.get("RF")).toMatchObject({ state: "not_seen", notExaminedReason: "bandaged", grade: null });
  expect(days[0]!.feet.get("LH")).toMatchObject({ state: "not_said", grade: null });
});

test("order of rows of different feet and days does not matter", () => {
  const plain = (rows: typeof visits) =>
    horseVisits(studyOf({ visits: rows })).map(({ visitDate, feet }) => [visitDate, feet.size]);
  expect(plain([...visits].reverse())).toEqual(plain(visits));
  expect(horseVisits(studyOf())).toEqual([]);
});
