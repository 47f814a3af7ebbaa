// npm run lab: opens JupyterLab in notebooks/ with the TypeScript kernel. What stands after `--` goes to JupyterLab.
import { spawn } from "node:child_process";
import { delimiter, join, resolve } from "node:path";
import { findJupyter } from "../src/run/lab/findJupyter.js";
import { versionAtLeast } from "../src/run/lab/versionAtLeast.js";
import { writeKernelSpec } from "../src/run/writeKernelSpec.js";
import { StudyError } from "../src/study/StudyError.js";
import { environment } from "./environment.js";

const root = resolve(import.meta.dirname, "..");

async function jupyter(): Promise<string> {
  const found = await findJupyter({ folder: root });
  if (found !== null && versionAtLeast(found.version, "4.0.0")) return found.program;
  return join(environment(root), "jupyter-lab");
}

async function lab(): Promise<void> {
  const program = await jupyter();
  // In a folder of the project, so that nothing of the user's is changed; JUPYTER_PATH goes before every other place.
  const data = join(root, "node_modules", ".cache", "jupyter");
  await writeKernelSpec(join(data, "kernels", "tslab"));
  const path = [data, process.env["JUPYTER_PATH"] ?? ""].filter((folder) => folder !== "").join(delimiter);
  // JupyterLab refuses the superuser, who is the only user in many containers, unless told so.
  const superuser = process.getuid?.() === 0 ? ["--allow-root"] : [];
  // A new notebook is offered the TypeScript kernel first.
  const kernel = "--MultiKernelManager.default_kernel_name=tslab";
  const child = spawn(program, [...superuser, kernel, ...process.argv.slice(2)], {
    cwd: join(root, "notebooks"),
    env: { ...process.env, JUPYTER_PATH: path },
    stdio: "inherit",
  });
  // Ctrl-C reaches JupyterLab too, which asks whether to stop; this process waits for its answer.
  process.on("SIGINT", () => undefined);
  process.on("SIGTERM", () => child.kill("SIGTERM"));
  child.on("exit", (code) => {
    process.exitCode = code ?? 1;
  });
}

try {
  await lab();
} catch (fault) {
  if (!(fault instanceof StudyError)) throw fault;
  process.stderr.write(`${fault.message}\n${fault.hint}\n`);
  process.exitCode = 1;
}
