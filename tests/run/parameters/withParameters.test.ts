import { expect, test } from "vitest";
import type { ParameterValue } from "../../../src/run/parameters/ParameterValue.js";
import { withParameters } from "../../../src/run/parameters/withParameters.js";
import { StudyError } from "../../../src/study/StudyError.js";
import { codeCell, notebookOf } from "../notebookOf.js";
import { schemaFaults } from "../schemaFaults.js";

const cell = codeCell(
  'const folder = "data";\nconst caseGrade: 1 | 2 | 3 = 1;\nconst asOf: string | null = "2025-01-31";\nconst until = null;\nconst windows = [14];\nconst names = [];',
  "p",
  ["parameters"],
);
const notebook = { ...notebookOf(), cells: [cell, codeCell("folder", "use")] };

test("a cell after the parameters declares the values of this run", () => {
  const before = structuredClone(notebook);
  const changed = withParameters(notebook, {
    folder: 'a "b"\u2028',
    caseGrade: 2,
    asOf: null,
    windows: [7, 28],
    names: ["a", 1],
  });
  expect(changed.cells.map((item) => item.id)).toEqual(["p", "injected-parameters", "use"]);
  expect(changed.cells[1]).toEqual({
    cell_type: "code",
    id: "injected-parameters",
    metadata: { tags: ["injected-parameters"] },
    source: [
      "// Set for this run, in place of the values above.",
      'const folder = "a \\"b\\"\u2028";',
      "const caseGrade: 1 | 2 | 3 = 2;",
      "const asOf: string | null = null;",
      "const windows = [7, 28];",
      'const names = ["a", 1];',
    ].join("\n"),
    outputs: [],
    execution_count: null,
  });
  expect(schemaFaults(changed)).toEqual([]);
  expect(notebook).toEqual(before);
});

test("values of an earlier run are replaced, not added to, and no values change nothing", () => {
  const once = withParameters(notebook, { folder: "one", caseGrade: 3 });
  const twice = withParameters(once, { folder: "two" });
  expect(twice.cells.map((item) => item.source.split("\n").at(-1))).toEqual([
    "const names = [];",
    'const folder = "two";',
    "folder",
  ]);
  expect(withParameters(once, {})).toBe(once);
});

const refused: [string, Record<string, ParameterValue>, string, RegExp][] = [
  [
    "unknown_parameter",
    { caseGrad: 2 },
    'Did you mean "caseGrade"?',
    /no parameter "caseGrad"; it has folder, caseGrade, asOf, until, windows, names/,
  ],
  [
    "wrong_parameter",
    { folder: 3 },
    "Give a value of the same kind.",
    /"folder" cannot be the number 3: in the notebook it is the text "data"/,
  ],
  [
    "wrong_parameter",
    { caseGrade: "2" },
    "Give a value of the same kind.",
    /cannot be the text "2": in the notebook it is the number 1/,
  ],
  ["wrong_parameter", { caseGrade: NaN }, "Give a value of the same kind.", /cannot be the number NaN/],
  ["wrong_parameter", { folder: null }, "Give a value of the same kind.", /cannot be null/],
  ["wrong_parameter", { windows: ["a"] }, "Give a value of the same kind.", /cannot be the list \["a"\]/],
  [
    "wrong_parameter",
    { windows: 14 },
    "Give a value of the same kind.",
    /cannot be the number 14: in the notebook it is the list \[14\]/,
  ],
  ["wrong_parameter", { folder: ["a"] }, "Give a value of the same kind.", /cannot be the list/],
];

test.each(refused)("%s: %j", (code, values, hint, message) => {
  expect(() => withParameters(notebook, values)).toThrow(message);
  expect(() => withParameters(notebook, values)).toThrow(expect.objectContaining({ code, hint }) as StudyError);
});

test("null in the notebook leaves the kind open", () => {
  for (const value of ["a", 1, true, null, [1]]) expect(() => withParameters(notebook, { until: value })).not.toThrow();
});

test("a notebook without parameters says so", () => {
  expect(() => withParameters(notebookOf("1"), { folder: "a" })).toThrow(
    'The notebook takes no parameters, so "folder" cannot be set.',
  );
});
