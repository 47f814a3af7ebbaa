import { expect, test } from "vitest";
import { runNotebook } from "../../src/run/runNotebook.js";
import { folderWith } from "./folders.js";
import { notebookOf } from "./notebookOf.js";

// The kernel's compiler (tslab 1.0.22) has looked for packages in the folder by then.
test("a folder of packages that is made while a notebook runs does not stop it", { timeout: 90_000 }, async () => {
  const make = `mkdirSync("node_modules"); writeFileSync("node_modules/a.json", "{}"); await new Promise((done) => setTimeout(done, 1000));`;
  const notebook = notebookOf(
    'import { mkdirSync, writeFileSync } from "node:fs"; import { display } from "tslab"; console.log(typeof display);',
    make,
    'console.log("after");',
    'import { join } from "node:path"; console.log(join("a", "b"));',
  );
  const { notebook: run } = await runNotebook(notebook, { folder: folderWith() });
  const printed = run.cells
    .flatMap((cell) => (cell.cell_type === "code" ? cell.outputs : []))
    .map((output) => ("text" in output ? output.text : ""));
  expect(printed).toEqual(["object\n", "after\n", "a/b\n"]);
});
