import { expect, test } from "vitest";
import { studyDeclaration } from "../../src/answer/studyDeclaration.js";
import { withSettings } from "../../src/study/withSettings.js";
import { answered } from "./climateAnswer.js";
import { poorStudies, seasonHerd } from "./seasonHerd.js";

test("exposure, step, adjustment and case definition as set; what cannot be held equal is said", () => {
  const study = withSettings(seasonHerd(), {
    primaryExposure: "rainMm28d",
    exposurePer: 20,
    adjustFor: ["season_2", "observer"],
    caseGrade: 2,
  });
  const { sentence } = answered(studyDeclaration(study));
  expect(sentence).toBe(
    "Declared: odds ratio of thrush (grade 2 or more on the project scale) per 20 mm of rain of 28 days, held equal for season_2, observer.",
  );
  const { tables } = answered(studyDeclaration(withSettings(study, { caseGrade: 1 })));
  expect(tables[0]!.rows.at(-1)).toEqual({ what: "Cannot be kept", declared: "observer: the same at every foot" });
});

test("it is printed for studies that cannot keep it, with the reason", () => {
  for (const [, study, reason] of poorStudies()) {
    const { tables } = answered(studyDeclaration(study));
    expect(String(tables[0]!.rows.at(-1)!["declared"])).toMatch(reason);
  }
});

test("settings that make no sense are refused", () => {
  for (const bad of [
    { primaryExposure: "rain" },
    { exposurePer: 0 },
    { adjustFor: ["sun"] },
    { adjustFor: ["season", "season"] },
  ]) {
    expect(() => withSettings(seasonHerd(), bad as object)).toThrow(/cannot be used/);
  }
});
