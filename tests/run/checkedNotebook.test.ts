import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { checkedNotebook } from "../../src/run/checkedNotebook.js";
import { StudyError } from "../../src/study/StudyError.js";
import { schemaFaults } from "./schemaFaults.js";

test("a notebook written by nbformat 5.11.1 passes, with its lines joined", () => {
  const text = readFileSync(`${import.meta.dirname}/../reference/nbformat/written-by-nbformat.ipynb`, "utf8");
  const notebook = checkedNotebook(JSON.parse(text));
  expect(schemaFaults(notebook)).toEqual([]);
  // Source: the texts in write-sample.py beside that file.
  expect(notebook.cells[1]?.source).toBe("const a = 1;\r\nconsole.log(a);\n\n// é, 🐎, \u2028 and \v within a line\n");
  const code = notebook.cells[1];
  if (code?.cell_type !== "code") throw new Error("the second cell is code");
  expect(code.outputs[0]).toEqual({
    output_type: "stream",
    name: "stdout",
    text: "one\ntwo\rthree\ffour\x1cfive\x85six\u2029seven",
  });
  expect(code.outputs[1]).toMatchObject({
    data: { "text/plain": "", "application/vnd.vegalite.v5+json": { a: { text: "line\nline" } } },
  });
});

test("cells of format 4.4 get ids, and ids that are repeated or not allowed are replaced", () => {
  const cell = (id?: unknown) => ({ cell_type: "markdown", metadata: {}, source: "", ...(id === undefined ? {} : { id }) });
  const value = {
    nbformat: 4,
    nbformat_minor: 4,
    metadata: {},
    cells: [cell("a"), cell(), cell("a"), cell("not allowed"), cell("cell-2"), cell(7)],
  };
  const before = structuredClone(value);
  const notebook = checkedNotebook(value);
  expect(notebook.cells.map((item) => item.id)).toEqual(["a", "cell-2-", "cell-3", "cell-4", "cell-2", "cell-6"]);
  expect(notebook.nbformat_minor).toBe(5);
  expect(schemaFaults(notebook)).toEqual([]);
  expect(value).toEqual(before);
});

test.each([
  ["no object", "its content is no object"],
  [{ nbformat: 3, cells: [] }, "its format is version 3, not 4"],
  [{ nbformat: 4 }, "it has no list of cells"],
  [{ nbformat: 4, cells: [{ cell_type: "code", source: 3 }] }, "the source of cell 1 is neither text nor a list of lines"],
  [{ nbformat: 4, cells: [{ cell_type: "heading", source: "" }] }, 'cell 1 is of the unknown kind "heading"'],
  [{ nbformat: 4, cells: [null] }, "cell 1 is no object"],
  [
    { nbformat: 4, cells: [{ cell_type: "code", source: "", outputs: [{ output_type: "sound" }] }] },
    'output 1 of cell 1 is of the unknown kind "sound"',
  ],
])("%j is refused in words", (value, words) => {
  const fault = (() => {
    try {
      return checkedNotebook(value);
    } catch (thrown) {
      return thrown;
    }
  })();
  expect(fault).toBeInstanceOf(StudyError);
  expect((fault as StudyError).code).toBe("bad_notebook");
  expect((fault as StudyError).message).toContain(words);
});
