import { thrushCases } from "../../src/derive/thrushCases.js";
import type { FootCase } from "../../src/derive/FootCase.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";

/** Cases from lines `date horse foot grade`; a grade of `-` is a foot that was not examined. */
export function footCases(lines: readonly string[]): FootCase[] {
  const visits = lines.map((line) => {
    const [visitDate = "", horseId = "", foot = "", grade = ""] = line.split(" ");
    const seen = grade === "-" ? { examined: false } : { thrushGrade: Number(grade) };
    return footVisit({ visitDate, horseId, foot: foot as FootVisit["foot"], ...seen });
  });
  return thrushCases(studyOf({ visits }));
}
