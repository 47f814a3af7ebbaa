import { expect, test } from "vitest";
import { vetFlags } from "../../src/derive/vetFlags.js";
import { footVisit } from "../footVisit.js";

const rules = (visits: ReturnType<typeof footVisit>[]) =>
  vetFlags(visits).map((flag) => `${flag.visitDate} ${flag.foot ?? "horse"} ${flag.urgency} ${flag.rule}`);

// The rules are common practice, no source; grade 3 is to the quick by the definition of the project scale.
test("a clean record raises no flag", () => {
  expect(vetFlags([])).toEqual([]);
  expect(
    rules([footVisit({ visitDate: "2025-01-06", thrushGrade: 1 }), footVisit({ visitDate: "2025-02-10", thrushGrade: 2 })]),
  ).toEqual([]);
});

test("grade 3, a coronet crack and a lame visit are vet work now", () => {
  expect(rules([footVisit({ visitDate: "2025-01-06", thrushGrade: 3 })])).toEqual(["2025-01-06 LF now thrush_to_the_quick"]);
  expect(rules([footVisit({ visitDate: "2025-01-06", crackFrom: "coronet" })])).toEqual(["2025-01-06 LF now crack_at_coronet"]);
  expect(rules([footVisit({ visitDate: "2025-01-06", reason: "lame", thrushGrade: 1 })])).toEqual([
    "2025-01-06 LF now lame",
    "2025-01-06 LF soon thrush_and_lame",
  ]);
});

test("a lame visit is one finding of the horse, however many feet were recorded", () => {
  const visit = (foot: "LF" | "RF") => footVisit({ foot, reason: "lame", thrushGrade: 0 });
  expect(rules([visit("LF"), visit("RF")])).toEqual(["2025-01-06 horse now lame"]);
});

test("grade 2 at two visits running is flagged at the second, on that foot only", () => {
  const visits = [
    footVisit({ visitDate: "2025-01-06", thrushGrade: 2 }),
    footVisit({ visitDate: "2025-02-10", thrushGrade: 2 }),
    footVisit({ visitDate: "2025-01-06", thrushGrade: 2, foot: "RH" }),
    footVisit({ visitDate: "2025-02-10", thrushGrade: 1, foot: "RH" }),
    footVisit({ visitDate: "2025-03-17", thrushGrade: 2, foot: "RH" }),
  ];
  expect(rules(visits)).toEqual(["2025-02-10 LF soon thrush_two_visits"]);
  expect(rules([...visits].reverse())).toEqual(rules(visits));
});

test("an ungraded visit between two grade 2 visits is passed over", () => {
  const visits = [
    footVisit({ visitDate: "2025-01-06", thrushGrade: 2 }),
    footVisit({ visitDate: "2025-02-10", thrushGrade: null }),
    footVisit({ visitDate: "2025-03-17", thrushGrade: 2 }),
  ];
  expect(rules(visits)).toEqual(["2025-03-17 LF soon thrush_two_visits"]);
});

test("the same abscess seen again within 14 days is not a second one", () => {
  const at = (visitDate: string) => footVisit({ visitDate, abscess: true });
  expect(rules([at("2025-01-06"), at("2025-01-19")])).toEqual([]);
  expect(rules([at("2025-01-06"), at("2025-01-20")])).toEqual(["2025-01-20 LF soon abscess_again"]);
});

test("rows of one day before and after trimming are one visit", () => {
  const visits = [
    footVisit({ visitDate: "2025-01-06", stage: "before_trim", thrushGrade: 2 }),
    footVisit({ visitDate: "2025-01-06", stage: "after_trim", thrushGrade: 2 }),
  ];
  expect(rules(visits)).toEqual([]);
});

test("a flag of the last visit of the horse is told from an older one", () => {
  const visits = [
    footVisit({ visitDate: "2025-01-06", thrushGrade: 3 }),
    footVisit({ visitDate: "2025-02-10", thrushGrade: 0, foot: "RF" }),
  ];
  expect(vetFlags(visits).map((flag) => flag.latest)).toEqual([false]);
  expect(vetFlags(visits.slice(0, 1)).map((flag) => flag.latest)).toEqual([true]);
});
