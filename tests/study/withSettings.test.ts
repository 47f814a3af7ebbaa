import { expect, test } from "vitest";
import { defaultSettings } from "../../src/study/defaultSettings.js";
import { settingRules } from "../../src/study/settingRules.js";
import type { Settings } from "../../src/study/Settings.js";
import { withSettings } from "../../src/study/withSettings.js";
import { studyOf } from "../study.js";

test("changes what is named and nothing else", () => {
  const study = studyOf();
  const changed = withSettings(study, { caseGrade: 2, asOf: "2025-03-01" });
  expect(changed.settings).toEqual({ ...defaultSettings, caseGrade: 2, asOf: "2025-03-01" });
  expect(study.settings).toEqual(defaultSettings);
});

test("a misspelt name and a value that makes no sense are refused in words", () => {
  const odd = (changes: object) => () => withSettings(studyOf(), changes);
  expect(odd({ caseGarde: 2 })).toThrow("There is no setting caseGarde.");
  expect(odd({ caseGrade: 7 })).toThrow("The setting caseGrade is 7");
  expect(odd({ level: 95 })).toThrow("cannot be used");
  expect(odd({ asOf: "2025-02-31" })).toThrow("asOf");
  expect(odd({ rainWindowsDays: [] })).toThrow("rainWindowsDays");
  // An odds ratio of a billion units has no number any more.
  expect(odd({ exposurePer: 1e9 })).toThrow("The setting exposurePer is 1000000000");
  expect(odd({ constructor: 1 })).toThrow("There is no setting constructor.");
});

test("the usual settings keep their own rules", () => {
  for (const [name, rule] of Object.entries(settingRules))
    expect(rule.allows(defaultSettings[name as keyof Settings]), name).toBe(true);
});
