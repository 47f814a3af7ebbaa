import { expect, test } from "vitest";
import type { Answer } from "../../src/answer/Answer.js";
import { hornColour } from "../../src/answer/hornColour.js";
import { methodsSection } from "../../src/answer/methodsSection.js";
import { studyDeclaration } from "../../src/answer/studyDeclaration.js";
import { studyPaper } from "../../src/answer/studyPaper.js";
import { yardChanges } from "../../src/answer/yardChanges.js";
import { version } from "../../src/study/version.js";
import { seasonHerd } from "./seasonHerd.js";

test("what was declared, then what was run with its n, then what was not and why, then versions", () => {
  const study = seasonHerd();
  const replies = [yardChanges(study), hornColour(study), studyDeclaration(study)];
  const colour = replies[1] as Answer;
  const paragraphs = methodsSection([...replies, studyPaper(study, replies)]).split("\n\n");
  expect(paragraphs).toHaveLength(4);
  expect(paragraphs[0]).toMatch(/^Declared first\. Case: a foot with grade 1 or more on the project scale\. Unit: /);
  expect(paragraphs[1]).toBe(
    `${colour.question} Unit: a foot at a visit, within its horse and day; n ${colour.method.n}, missing ${colour.method.missing}. ${colour.method.text}`,
  );
  expect(paragraphs[2]).toMatch(/Not done: No yard has a dated change\.$/);
  expect(paragraphs[3]).toContain(version);
  expect(paragraphs[3]).toContain(process.versions.node);
});

test("nothing run: nothing but the versions", () => {
  expect(methodsSection([]).split("\n\n")).toHaveLength(1);
});
