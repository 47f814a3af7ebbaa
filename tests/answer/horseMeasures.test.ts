import { expect, test } from "vitest";
import { horseMeasures } from "../../src/answer/horseMeasures.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";
import { oneHorse } from "./oneHorse.js";

test("the latest beside the first at that stage; a foot that was not measured has a dash", () => {
  const answer = horseMeasures(oneHorse());
  expect(answer).toMatchObject({
    sentence: "Latest measures: 1 foot, 24 February 2025, before trimming. In brackets: the first at that stage, 6 January 2025.",
    method: { n: 1, missing: 3 },
  });
  expect(answer.kind === "answer" && answer.tables[0]!.rows).toEqual([
    { foot: "near fore", toeLengthMm: "86 (82)" },
    { foot: "off fore", toeLengthMm: "– (80)" },
    { foot: "near hind", toeLengthMm: null },
    { foot: "off hind", toeLengthMm: null },
  ]);
});

test("stages are never mixed: the stage with most measures of the last day, beside the first of its own", () => {
  const at = (visitDate: string, stage: "before_trim" | "after_trim", toeLengthMm: number, toeAngleDeg: number | null = null) =>
    footVisit({ visitDate, stage, toeLengthMm, toeAngleDeg });
  const visits = [
    at("2025-01-06", "before_trim", 90),
    at("2025-02-17", "after_trim", 80, 52),
    at("2025-02-17", "before_trim", 91),
  ];
  const answer = horseMeasures(studyOf({ visits }));
  expect(answer).toMatchObject({ sentence: "Latest measures: 1 foot, 17 February 2025, after trimming." });
  expect(answer.kind === "answer" && answer.tables[0]!.rows[0]).toEqual({
    foot: "near fore",
    toeLengthMm: "80",
    toeAngleDeg: "52",
  });
});

test("without a measure there is no answer", () => {
  expect(horseMeasures(studyOf({ visits: [footVisit({ thrushGrade: 1 })] }))).toMatchObject({ kind: "not_enough_data" });
});
