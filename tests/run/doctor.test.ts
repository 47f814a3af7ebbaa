import { join } from "node:path";
import { expect, test } from "vitest";
import { doctor } from "../../src/run/doctor.js";
import { writeKernelSpec } from "../../src/run/writeKernelSpec.js";
import { folderWith, heard } from "./folders.js";
import { jupyterStub } from "./lab/jupyterStub.js";

const onUnix = test.skipIf(process.platform === "win32");

onUnix("all well: says what is there and ends with 0", async () => {
  const folder = folderWith();
  jupyterStub(join(folder, ".venv", "bin"), "4.6.6");
  await writeKernelSpec(join(folder, "share", "kernels", "tslab"));
  const terminal = heard();
  const env = { JUPYTER_PATH: join(folder, "share") };
  expect(await doctor(terminal, { folder, env, path: "", home: folder })).toBe(0);
  const lines = terminal.text().trimEnd().split("\n");
  expect(lines.map((line) => line.slice(0, 17).trim())).toEqual([
    "ok    Node.js",
    "ok    Kernel",
    "ok    Jupyter",
    "ok    Kernel spec",
    "ok    Fonts",
    "",
    "All is well.",
  ]);
  expect(terminal.text()).toContain("tslab 1.0.22, zeromq 6.");
});

onUnix("what is missing comes with the command that mends it, and it ends with 1", async () => {
  const folder = folderWith();
  const bare = { folder, env: { JUPYTER_DATA_DIR: folder }, path: "", home: folder };
  const terminal = heard();
  expect(await doctor(terminal, { ...bare, node: "18.20.4" })).toBe(1);
  const said = terminal.text();
  expect(said).toMatch(/MEND {2}Node\.js +18\.20\.4, but 20\.19 or later is needed\n +nvm install 22/);
  expect(said).toMatch(/MEND {2}Jupyter +no jupyter-lab that starts\n +python3 -m pip install jupyterlab\n/);
  expect(said).toMatch(/MEND {2}Kernel spec +Jupyter knows no TypeScript kernel\n +npx underfoot kernel install\n/);
  expect(said).toMatch(/\n3 to mend: run the commands above\.\n$/);
  jupyterStub(join(folder, ".venv", "bin"), "3.6.8");
  const old = heard();
  await doctor(old, bare);
  expect(old.text()).toMatch(/3\.6\.8.*but 4\.0 or later is needed\n +python3 -m pip install --upgrade jupyterlab/);
});
