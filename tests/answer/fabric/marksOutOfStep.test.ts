import { expect, test } from "vitest";
import { marksOutOfStep } from "../../../src/answer/fabric/marksOutOfStep.js";
import type { FootVisit } from "../../../src/study/FootVisit.js";
import { footVisit } from "../../footVisit.js";

const track = (visitDate: string, markBelowCoronetMm: number, cells: Partial<FootVisit> = {}) =>
  footVisit({ visitDate, markKind: "abscess_track", markBelowCoronetMm, ...cells });
const codes = (...visits: FootVisit[]) => marksOutOfStep({ visits }).map(({ code }) => code);

test("a track that climbs by more than 6 mm is told, with both readings", () => {
  const [issue] = marksOutOfStep({ visits: [track("2025-01-06", 30), track("2025-02-15", 23, { line: 9 })] });
  expect([issue?.code, issue?.line, issue?.column]).toEqual(["mark_out_of_step", 9, "mark_below_coronet_mm"]);
  expect(issue?.message).toContain("of A LF lies 23 mm below the coronet, and lay at 30 mm 40 days before (line 2)");
  expect(codes(track("2025-01-06", 30), track("2025-02-15", 24))).toEqual([]);
});

test("horn takes a track down by half a millimetre a day at most, and 6 mm are allowed for reading", () => {
  // 40 days: 20 mm and 6 mm.
  expect(codes(track("2025-01-06", 10), track("2025-02-15", 36))).toEqual([]);
  expect(codes(track("2025-01-06", 10), track("2025-02-15", 37))).toEqual(["mark_out_of_step"]);
});

test("an abscess between the readings may have left a new track; other feet and rings are no such track", () => {
  expect(codes(track("2025-01-06", 40), footVisit({ visitDate: "2025-01-20", abscess: true }), track("2025-02-15", 5))).toEqual(
    [],
  );
  expect(codes(track("2025-01-06", 40), track("2025-02-15", 5, { foot: "RF" }))).toEqual([]);
  expect(codes(track("2025-01-06", 40), track("2025-02-15", 5, { markKind: "ring" }))).toEqual([]);
});
