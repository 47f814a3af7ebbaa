import { expect, test } from "vitest";
import { notebookParameters } from "../../../src/run/parameters/notebookParameters.js";
import { codeCell, notebookOf } from "../notebookOf.js";

const source = `// What to read.
const folder = "../data-demo"; // the demo
let caseGrade: 1 | 2 | 3 = 1
const asOf: string | null = null;
const windows = [14, 28];
const twice = 2 * 3;
const sum = 1 + 2;
folder;`;

test("the plain lines of the tagged cell are the parameters, in their order", () => {
  const cell = codeCell(source, "p", ["parameters", "other"]);
  const notebook = { ...notebookOf("1"), cells: [codeCell("const x = 1;", "before"), cell] };
  expect(notebookParameters(notebook)).toEqual({
    cell,
    parameters: [
      { name: "folder", annotation: null, value: "../data-demo" },
      { name: "caseGrade", annotation: "1 | 2 | 3", value: 1 },
      { name: "asOf", annotation: "string | null", value: null },
      { name: "windows", annotation: null, value: [14, 28] },
    ],
  });
});

test("a notebook without such a cell has none; two such cells are refused", () => {
  expect(notebookParameters(notebookOf("const x = 1;"))).toEqual({ cell: null, parameters: [] });
  const cells = [codeCell("const a = 1;", "a", ["parameters"]), codeCell("const b = 1;", "b", ["parameters"])];
  expect(() => notebookParameters({ ...notebookOf(), cells })).toThrow('The notebook has 2 cells with the tag "parameters".');
});
