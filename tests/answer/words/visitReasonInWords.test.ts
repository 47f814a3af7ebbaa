import { expect, test } from "vitest";
import { visitReasonInWords } from "../../../src/answer/words/visitReasonInWords.js";
import { visitColumns } from "../../../src/study/visitColumns.js";

test("every reason that may be recorded, in words", () => {
  const { values } = visitColumns.find((column) => column.name === "reason")!;
  const words = values.map((reason) => visitReasonInWords(reason));
  expect(words).toEqual(["routine", "lost shoe", "lame", "follow-up", "new horse", "other"]);
});
