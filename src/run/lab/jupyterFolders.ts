import { posix, win32 } from "node:path";

/** What decides where Jupyter keeps its data. */
export interface JupyterPlace {
  readonly platform: NodeJS.Platform;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly home: string;
  /** Folder of the Python environment that Jupyter runs in; null when there is none. */
  readonly prefix: string | null;
}

/** The data folders of Jupyter; kernels lie in `kernels` below each. */
export interface JupyterFolders {
  /** The user's own, where a kernel is installed for all of the user's environments. */
  readonly user: string;
  /** All of them, in the order in which Jupyter looks. */
  readonly all: readonly string[];
}

/**
 * Where Jupyter looks for data, such as kernel specifications.
 * Source: Jupyter documentation, "Common Directories and File Locations" (data files), as of jupyter_core 5: `JUPYTER_PATH` first, then
 * the user's folder, the environment's, the system's; inside a virtual environment the environment's goes before the user's.
 */
export function jupyterFolders({ platform, env, home, prefix }: JupyterPlace): JupyterFolders {
  const windows = platform === "win32";
  const paths = windows ? win32 : posix;
  const given = (name: string) => (env[name] === undefined || env[name] === "" ? null : env[name]);
  const byPlatform = () => {
    if (windows) return paths.join(given("APPDATA") ?? paths.join(home, "AppData", "Roaming"), "jupyter");
    if (platform === "darwin") return paths.join(home, "Library", "Jupyter");
    return paths.join(given("XDG_DATA_HOME") ?? paths.join(home, ".local", "share"), "jupyter");
  };
  const user = given("JUPYTER_DATA_DIR") ?? byPlatform();
  const system = windows
    ? [paths.join(given("PROGRAMDATA") ?? "C:\\ProgramData", "jupyter")]
    : ["/usr/local/share/jupyter", "/usr/share/jupyter"];
  const extra = (given("JUPYTER_PATH") ?? "").split(paths.delimiter).filter((folder) => folder !== "");
  const own = prefix === null ? [] : [paths.join(prefix, "share", "jupyter")];
  return { user, all: [...new Set([...extra, ...own, user, ...system])] };
}
