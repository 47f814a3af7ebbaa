import { expect, test } from "vitest";
import { findingsInWords } from "../../../src/answer/words/findingsInWords.js";
import { horseVisits } from "../../../src/derive/horseVisits.js";
import type { FootVisit } from "../../../src/study/FootVisit.js";
import { footVisit } from "../../footVisit.js";
import { studyOf } from "../../study.js";

const said = (...rows: readonly Partial<FootVisit>[]) =>
  findingsInWords(horseVisits(studyOf({ visits: rows.map((cells) => footVisit(cells)) }))[0]!.feet.get("LF"));

test.each<[string, Partial<FootVisit>, string | null]>([
  ["grade 0", { thrushGrade: 0, thrushSite: ["central_sulcus"] }, "thrush 0"],
  ["grade with its clefts", { thrushGrade: 2, thrushSite: ["central_sulcus", "lateral_groove"] }, "thrush 2 (central, lateral)"],
  ["no grade is no grade 0", { examined: true }, "looked at"],
  [
    "usual states are not repeated",
    { thrushGrade: 1, bars: "level", whiteLine: "tight", shoeState: "tight", abscess: false },
    "thrush 1",
  ],
  ["bare is usual too", { examined: true, shoeState: "bare" }, "looked at"],
  [
    "every finding",
    {
      thrushGrade: 3,
      abscess: true,
      crackSite: ["toe", "quarter"],
      crackFrom: "coronet",
      crackLengthMm: 15,
      whiteLine: "separated",
      bars: "folded",
      flareSite: ["medial"],
      markKind: "abscess_track",
      markBelowCoronetMm: 22,
      shoeState: "lost",
    },
    "thrush 3; abscess; crack toe quarter from coronet 15 mm; white line separated; bars folded; flare medial; abscess track 22 mm below coronet; shoe lost",
  ],
  ["a crack of which only the length is known", { crackLengthMm: 8 }, "crack 8 mm"],
  ["not looked at, with the reason", { examined: false, notExaminedReason: "bandaged" }, "not looked at: bandaged"],
  ["not looked at, without", { examined: false }, "not looked at"],
  ["nothing said", {}, null],
])("%s", (_, cells, words) => {
  expect(said(cells)).toBe(words);
});

test("two rows of one day are put together, each finding once", () => {
  expect(
    said(
      { stage: "before_trim", thrushGrade: 1, bars: "folded" },
      { stage: "after_trim", bars: "folded", whiteLine: "stretched" },
    ),
  ).toBe("thrush 1; bars folded; white line stretched");
});

test("no look at all is nothing; a long reason is cut", () => {
  expect(findingsInWords(undefined)).toBeNull();
  expect(said({ examined: false, notExaminedReason: "x".repeat(200) })).toBe(`not looked at: ${"x".repeat(59)}…`);
});
