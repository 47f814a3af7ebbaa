import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { readNotebook } from "../../src/run/readNotebook.js";
import { writeNotebook } from "../../src/run/writeNotebook.js";

test("a notebook written by nbformat 5.11.1 is written back byte for byte", async () => {
  const folder = mkdtempSync(join(tmpdir(), "underfoot-test-"));
  try {
    const [sample, path] = [`${import.meta.dirname}/../reference/nbformat/written-by-nbformat.ipynb`, join(folder, "copy.ipynb")];
    const notebook = await readNotebook(sample);
    const before = structuredClone(notebook);
    await writeNotebook(path, notebook);
    expect(readFileSync(path, "utf8")).toBe(readFileSync(sample, "utf8"));
    expect(notebook).toEqual(before);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
