import { expect, test } from "vitest";
import { jupyterFolders } from "../../../src/run/lab/jupyterFolders.js";

// Source of the places: Jupyter documentation, "Common Directories and File Locations". tests/lab compares them with what an installed
// Jupyter says itself.
test("Linux: the user's folder, XDG_DATA_HOME and JUPYTER_DATA_DIR before it", () => {
  const place = { platform: "linux", home: "/home/anna", prefix: null } as const;
  expect(jupyterFolders({ ...place, env: {} })).toEqual({
    user: "/home/anna/.local/share/jupyter",
    all: ["/home/anna/.local/share/jupyter", "/usr/local/share/jupyter", "/usr/share/jupyter"],
  });
  expect(jupyterFolders({ ...place, env: { XDG_DATA_HOME: "/data" } }).user).toBe("/data/jupyter");
  expect(jupyterFolders({ ...place, env: { XDG_DATA_HOME: "/data", JUPYTER_DATA_DIR: "/j" } }).user).toBe("/j");
});

test("JUPYTER_PATH goes first, an environment's own folder before the user's, and none comes twice", () => {
  const env = { JUPYTER_PATH: "/a:/b::/usr/share/jupyter" };
  const { all } = jupyterFolders({ platform: "linux", home: "/home/anna", prefix: "/env", env });
  expect(all).toEqual([
    "/a",
    "/b",
    "/usr/share/jupyter",
    "/env/share/jupyter",
    "/home/anna/.local/share/jupyter",
    "/usr/local/share/jupyter",
  ]);
});

test("macOS and Windows", () => {
  const none = { home: "/Users/anna", prefix: null, env: {} };
  expect(jupyterFolders({ ...none, platform: "darwin" }).user).toBe("/Users/anna/Library/Jupyter");
  const windows = { platform: "win32", home: "C:\\Users\\anna", prefix: null } as const;
  const env = { APPDATA: "C:\\Users\\anna\\AppData\\Roaming", PROGRAMDATA: "C:\\ProgramData", JUPYTER_PATH: "D:\\j;E:\\k" };
  expect(jupyterFolders({ ...windows, env }).all).toEqual([
    "D:\\j",
    "E:\\k",
    "C:\\Users\\anna\\AppData\\Roaming\\jupyter",
    "C:\\ProgramData\\jupyter",
  ]);
});
