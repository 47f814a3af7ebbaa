import { cpSync, mkdirSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { writeKernelSpec } from "../../src/run/writeKernelSpec.js";
import { notebookFolder, notebooks } from "../notebooks/notebooks.js";
import { root } from "../repository/trackedFiles.js";

/** A copy of the notebooks, so that a run changes nothing of the project, and a Jupyter with settings and kernels of its own. */
export interface Workplace {
  /** Where the copies lie. */
  readonly notebooks: string;
  /** Where pictures for a person to look at go. */
  readonly pictures: string;
  /** Folder of the programs of .venv. */
  readonly programs: string;
  readonly env: NodeJS.ProcessEnv;
}

// Nothing is asked of the network, and no notice covers the notebook.
const settings = { "apputils-extension/notification": { fetchNews: "false", checkForUpdates: false } };

/** Makes it below reports/, from where the library is found as from notebooks/. */
export async function workplace(name: string): Promise<Workplace> {
  const folder = join(root, "reports", name);
  rmSync(folder, { recursive: true, force: true });
  const copies = join(folder, "notebooks");
  mkdirSync(copies, { recursive: true });
  for (const file of notebooks) cpSync(join(notebookFolder, file), join(copies, file));
  symlinkSync(join(root, "data-demo"), join(folder, "data-demo"));
  const place = (part: string) => join(folder, "jupyter", part);
  await writeKernelSpec(join(place("data"), "kernels", "tslab"));
  for (const [path, value] of Object.entries(settings)) {
    const file = join(place("settings"), "@jupyterlab", `${path}.jupyterlab-settings`);
    mkdirSync(join(file, ".."), { recursive: true });
    writeFileSync(file, JSON.stringify(value));
  }
  return {
    notebooks: copies,
    pictures: folder,
    programs: join(root, ".venv", process.platform === "win32" ? "Scripts" : "bin"),
    env: {
      ...process.env,
      JUPYTER_PATH: "",
      JUPYTER_DATA_DIR: place("data"),
      JUPYTER_CONFIG_DIR: place("config"),
      JUPYTER_RUNTIME_DIR: place("runtime"),
      JUPYTERLAB_SETTINGS_DIR: place("settings"),
      JUPYTERLAB_WORKSPACES_DIR: place("workspaces"),
    },
  };
}
