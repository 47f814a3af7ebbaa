import { join } from "node:path";
import { expect, test } from "vitest";
import { findJupyter } from "../../../src/run/lab/findJupyter.js";
import { folderWith } from "../folders.js";
import { jupyterStub } from "./jupyterStub.js";

// Windows has no scripts of this kind to stand in for the program.
const onUnix = test.skipIf(process.platform === "win32");

onUnix("the environment of the folder goes before the search path", async () => {
  const folder = folderWith();
  const elsewhere = join(folder, "python", "bin");
  const there = jupyterStub(elsewhere, "4.2.1");
  expect(await findJupyter({ folder, path: elsewhere })).toEqual({
    program: there,
    version: "4.2.1",
    prefix: join(folder, "python"),
  });
  const own = jupyterStub(join(folder, ".venv", "bin"), "4.6.6");
  expect(await findJupyter({ folder, path: elsewhere })).toMatchObject({ program: own, version: "4.6.6" });
});

onUnix("one that does not start is passed over, and none is null", async () => {
  const folder = folderWith();
  const [broken, whole] = [join(folder, "broken"), join(folder, "whole")];
  jupyterStub(broken, null);
  expect(await findJupyter({ folder, path: broken })).toBeNull();
  expect(await findJupyter({ folder, path: "" })).toBeNull();
  jupyterStub(whole, "4.0.0");
  expect(await findJupyter({ folder, path: `${broken}:${whole}` })).toMatchObject({ version: "4.0.0" });
});
