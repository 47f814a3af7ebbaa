import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import { homedir } from "node:os";
import { join } from "node:path";
import { shippedFont } from "../show/image/shippedFont.js";
import { exitCodes } from "./exitCodes.js";
import { kernelProgram } from "./kernel/kernelProgram.js";
import type { Finding } from "./lab/Finding.js";
import { findJupyter, type Jupyter } from "./lab/findJupyter.js";
import { jupyterFolders } from "./lab/jupyterFolders.js";
import { kernelFinding } from "./lab/kernelFinding.js";
import { versionAtLeast } from "./lab/versionAtLeast.js";
import type { Terminal } from "./Terminal.js";

/** What `underfoot doctor` looks at, where it is not what this process has. */
export interface DoctorOptions {
  /** Folder in which the notebooks are run; the working folder when left out. */
  readonly folder?: string;
  /** Version of Node. */
  readonly node?: string;
  /** Search path for Jupyter. */
  readonly path?: string;
  readonly env?: Readonly<Record<string, string | undefined>>;
  readonly home?: string;
}

const leastNode = "20.19.0";
const leastJupyter = "4.0.0";

function nodeFinding(version: string): Finding {
  const good = versionAtLeast(version, leastNode);
  return {
    what: "Node.js",
    good,
    found: good ? version : `${version}, but 20.19 or later is needed`,
    mend: good ? null : "nvm install 22   (or the installer of the Node.js project)",
  };
}

function kernelProgramFinding(folder: string): Finding {
  const what = "Kernel";
  try {
    const program = kernelProgram(folder);
    const require = createRequire(program);
    const versions = ["tslab", "zeromq"].map((name) => {
      const { version } = require(`${name}/package.json`) as { version: string };
      return `${name} ${version}`;
    });
    return { what, good: true, found: versions.join(", "), mend: null };
  } catch {
    return { what, good: false, found: "tslab or zeromq is not installed", mend: "npm install tslab@1.0.22 zeromq@6" };
  }
}

function jupyterFinding(jupyter: Jupyter | null, folder: string): Finding {
  const what = "Jupyter";
  const mend = existsSync(join(folder, "notebooks", "requirements.txt")) ? "npm run lab" : "python3 -m pip install jupyterlab";
  if (jupyter === null) return { what, good: false, found: "no jupyter-lab that starts", mend };
  const found = `JupyterLab ${jupyter.version}, ${jupyter.program}`;
  if (versionAtLeast(jupyter.version, leastJupyter)) return { what, good: true, found, mend: null };
  return {
    what,
    good: false,
    found: `${found}, but 4.0 or later is needed`,
    mend: "python3 -m pip install --upgrade jupyterlab",
  };
}

function fontFinding(): Finding {
  const what = "Fonts";
  try {
    const { family, regular, semiBold } = shippedFont();
    if (existsSync(regular) && existsSync(semiBold)) return { what, good: true, found: `${family}, for pictures`, mend: null };
  } catch {
    // The package is not there.
  }
  return {
    what,
    good: false,
    found: "the typeface of the pictures is missing",
    mend: "npm install @expo-google-fonts/source-sans-3",
  };
}

const line = ({ what, good, found, mend }: Finding) =>
  `${good ? "ok  " : "MEND"}  ${what.padEnd(11)}  ${found}\n${mend === null ? "" : `${" ".repeat(19)}${mend}\n`}`;

/**
 * The command `doctor`: looks at Node, the kernel, Jupyter, the kernel specification and the fonts, and says for each what is there and,
 * where something is missing, the command that mends it. Changes nothing. Returns the exit code: 0 when all is well, else 1.
 *
 * @private
 */
export async function doctor(terminal: Terminal, options: DoctorOptions = {}): Promise<number> {
  const { folder = process.cwd(), node = process.versions.node, env = process.env, home = homedir() } = options;
  const jupyter = await findJupyter({ folder, ...(options.path === undefined ? {} : { path: options.path }) });
  const { all } = jupyterFolders({ platform: process.platform, env, home, prefix: jupyter?.prefix ?? null });
  const findings = [
    nodeFinding(node),
    kernelProgramFinding(folder),
    jupyterFinding(jupyter, folder),
    await kernelFinding(all),
    fontFinding(),
  ];
  terminal.stdout.write(findings.map(line).join(""));
  const ill = findings.filter((finding) => !finding.good).length;
  terminal.stdout.write(
    ill === 0 ? "\nAll is well.\n" : `\n${ill} to mend: run the ${ill === 1 ? "command" : "commands"} above.\n`,
  );
  return ill === 0 ? exitCodes.clean : exitCodes.setAside;
}
