import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { StudyError } from "../src/study/StudyError.js";

const windows = process.platform === "win32";

function run(program: string, args: readonly string[]): boolean {
  return spawnSync(program, args, { stdio: ["ignore", "inherit", "inherit"] }).status === 0;
}

/**
 * The Python environment of the project, `.venv`, with what notebooks/requirements.txt pins. Made when it is not there or was made from
 * other pins. Returns the folder of its programs.
 */
export function environment(root: string): string {
  const folder = join(root, ".venv");
  const programs = join(folder, windows ? "Scripts" : "bin");
  const pins = join(root, "notebooks", "requirements.txt");
  const made = join(folder, "requirements.txt");
  const wanted = readFileSync(pins, "utf8");
  if (existsSync(made) && readFileSync(made, "utf8") === wanted) return programs;
  process.stderr.write("Making .venv with JupyterLab; this takes a minute or two, once.\n");
  rmSync(folder, { recursive: true, force: true });
  if (!["python3", "python"].some((python) => run(python, ["-m", "venv", folder]))) {
    throw new StudyError(
      "no_python",
      "No Python 3 that can make a virtual environment was found.",
      "Install it (on Debian and Ubuntu: apt install python3-venv), or install JupyterLab 4 your own way, and run it again.",
    );
  }
  const python = join(programs, windows ? "python.exe" : "python");
  if (!run(python, ["-m", "pip", "install", "--quiet", "--disable-pip-version-check", "-r", pins])) {
    throw new StudyError(
      "no_jupyter",
      "JupyterLab could not be installed into .venv; what pip said stands above.",
      "Check the network and run it again.",
    );
  }
  writeFileSync(made, wanted);
  return programs;
}

if (process.argv[1] === import.meta.filename) environment(join(import.meta.dirname, ".."));
