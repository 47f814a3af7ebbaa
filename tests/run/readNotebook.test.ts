import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { readNotebook } from "../../src/run/readNotebook.js";

const folder = mkdtempSync(join(tmpdir(), "underfoot-test-"));
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});
const file = (name: string, text: string) => {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
};

test("a file with a byte order mark is read", async () => {
  const path = file("mark.ipynb", '\uFEFF{"nbformat":4,"nbformat_minor":5,"metadata":{},"cells":[]}');
  expect((await readNotebook(path)).cells).toEqual([]);
});

test("the path stands in every refusal", async () => {
  const none = join(folder, "none.ipynb");
  await expect(readNotebook(none)).rejects.toMatchObject({
    code: "cannot_read",
    message: `The notebook ${none} could not be read: there is no such file.`,
  });
  const broken = file("broken.ipynb", '{"nbformat": 4,');
  await expect(readNotebook(broken)).rejects.toMatchObject({
    code: "bad_notebook",
    message: expect.stringContaining(`${broken} is not JSON`) as string,
  });
  const old = file("old.ipynb", '{"nbformat": 3, "worksheets": []}');
  await expect(readNotebook(old)).rejects.toMatchObject({
    code: "bad_notebook",
    message: expect.stringContaining(`${old}: This is not a Jupyter notebook that can be used`) as string,
  });
});
