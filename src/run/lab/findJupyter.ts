import { execFile } from "node:child_process";
import { access, constants } from "node:fs/promises";
import { delimiter, dirname, join } from "node:path";

/** A JupyterLab that can be started. */
export interface Jupyter {
  /** Absolute path of `jupyter-lab`. */
  readonly program: string;
  /** As it says itself, such as `4.4.10`. */
  readonly version: string;
  /** Folder of the Python environment it belongs to. */
  readonly prefix: string;
}

/** Where to look. */
export interface JupyterSearch {
  /** Folder whose virtual environment `.venv` goes before the search path. */
  readonly folder: string;
  /** The search path; that of this process when left out. */
  readonly path?: string;
}

const windows = process.platform === "win32";

function versionOf(program: string): Promise<string | null> {
  return new Promise((resolve) => {
    execFile(program, ["--version"], { timeout: 60_000, windowsHide: true }, (fault, out) => {
      resolve(fault === null ? (/^\d+(\.\w+)*/.exec(out.trim())?.[0] ?? null) : null);
    });
  });
}

/**
 * The first JupyterLab that starts: of the virtual environment `.venv` of the folder, else of the search path. Null when there
 * is none; one that is there but does not run is passed over.
 */
export async function findJupyter({ folder, path = process.env["PATH"] ?? "" }: JupyterSearch): Promise<Jupyter | null> {
  const places = [join(folder, ".venv", windows ? "Scripts" : "bin"), ...path.split(delimiter)].filter((place) => place !== "");
  for (const place of places) {
    const program = join(place, windows ? "jupyter-lab.exe" : "jupyter-lab");
    const there = await access(program, constants.X_OK).then(
      () => true,
      () => false,
    );
    if (!there) continue;
    const version = await versionOf(program);
    if (version !== null) return { program, version, prefix: dirname(place) };
  }
  return null;
}
