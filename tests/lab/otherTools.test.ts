import { execFileSync } from "node:child_process";
import { join } from "node:path";
import { homedir } from "node:os";
import { expect, test } from "vitest";
import { jupyterFolders } from "../../src/run/lab/jupyterFolders.js";
import type { CodeCell } from "../../src/run/Notebook.js";
import { readNotebook } from "../../src/run/readNotebook.js";
import { notebooks } from "../notebooks/notebooks.js";
import { root } from "../repository/trackedFiles.js";
import { workplace } from "./workplace.js";

test.each(notebooks)("nbclient runs %s to the end", async (name) => {
  const place = await workplace("nbclient-test");
  const file = join(place.notebooks, name);
  execFileSync(join(place.programs, "jupyter"), ["execute", "--inplace", file], {
    cwd: place.notebooks,
    env: place.env,
    stdio: "pipe",
  });
  const { cells } = await readNotebook(file);
  const code = cells.filter((cell): cell is CodeCell => cell.cell_type === "code" && cell.source.trim() !== "");
  const outputs = code.flatMap((cell) => cell.outputs);
  expect(outputs.filter((output) => output.output_type === "error")).toEqual([]);
  expect(outputs.filter((output) => output.output_type === "stream" && output.name === "stderr")).toEqual([]);
  // nbclient takes a dropped cell for a good one; the last cell of each notebook shows something.
  expect(code.at(-1)?.outputs.length).toBeGreaterThan(0);
});

test("the data folders are those that Jupyter itself names", async () => {
  const { programs, env } = await workplace("paths-test");
  const said = JSON.parse(execFileSync(join(programs, "jupyter"), ["--paths", "--json"], { env, encoding: "utf8" })) as {
    data: string[];
  };
  const place = { platform: process.platform, env, home: homedir(), prefix: join(root, ".venv") };
  const { user, all } = jupyterFolders(place);
  expect(user).toBe(env["JUPYTER_DATA_DIR"]);
  const real = (path: string) => join(path);
  expect(all.map(real)).toEqual(said.data.map(real));
});
