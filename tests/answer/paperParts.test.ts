import { expect, test } from "vitest";
import { hornColour } from "../../src/answer/hornColour.js";
import { intervalLength } from "../../src/answer/intervalLength.js";
import { paperParts } from "../../src/answer/paperParts.js";
import { yardChanges } from "../../src/answer/yardChanges.js";
import { seasonHerd } from "./seasonHerd.js";

test("every table and figure of an answer under a name of its own; what was skipped has none", () => {
  const study = seasonHerd();
  const { tables, figures } = paperParts([hornColour(study), yardChanges(study), intervalLength(study)]);
  expect(tables.map(({ name }) => name)).toEqual(["horn-colour-table-1", "interval-length-table-1"]);
  expect(figures.map(({ name }) => name)).toEqual(["interval-length-figure-1"]);
});
