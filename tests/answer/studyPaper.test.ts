import { expect, test } from "vitest";
import { hornColour } from "../../src/answer/hornColour.js";
import { studyDeclaration } from "../../src/answer/studyDeclaration.js";
import { studyPaper } from "../../src/answer/studyPaper.js";
import { yardChanges } from "../../src/answer/yardChanges.js";
import { answered } from "./climateAnswer.js";
import { seasonHerd } from "./seasonHerd.js";

test("methods from what was run, 22 items, no claim", () => {
  const study = seasonHerd();
  const replies = [studyDeclaration(study), yardChanges(study), hornColour(study)];
  const { tables, sentence } = answered(studyPaper(study, replies));
  const [methods, items] = tables;
  expect(methods!.rows.map((row) => row["part"])).toEqual(["study-declaration", "horn-colour", "since-the-change"]);
  expect(methods!.rows.at(-1)!["text"]).toBe("Not done: No yard has a dated change.");
  expect(items!.rows).toHaveLength(22);
  expect(items!.rows.find((row) => row["item"] === "3")!["output"]).toBe("study-declaration");
  // What was skipped covers nothing.
  expect(items!.rows.find((row) => row["item"] === "17")!["output"]).toBe("horn-colour");
  expect(sentence + JSON.stringify(tables)).not.toMatch(/compli/i);
  expect(tables.map(({ caption }) => caption)).toContain("Files that were read");
});
