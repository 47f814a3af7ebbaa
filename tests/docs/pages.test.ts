import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { describe, expect, test } from "vitest";
import type { Notebook } from "../../src/run/Notebook.js";
import { runNotebook } from "../../src/run/runNotebook.js";
import { root } from "../repository/trackedFiles.js";
import { type Fence, fences } from "./fences.js";

// Everything a page tells its reader to type is done: commands in a folder of its own, cells in one kernel a page, with the library as built.
const read = (path: string) => readFileSync(join(root, path), "utf8");
const pages = ["README.md", "DEVELOPERS.md", ...readdirSync(join(root, "docs")).filter((name) => name.endsWith(".md")).map((name) => `docs/${name}`)];
const scripts = Object.keys((JSON.parse(read("package.json")) as { scripts: object }).scripts);

function place(page: string): string {
  const folder = resolve(root, "reports", "docs-test", page.replace(/\W/g, "-"));
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(join(folder, "notebooks"), { recursive: true });
  symlinkSync(resolve(root, "data-demo"), join(folder, "data-demo"));
  return folder;
}

/** Does what one line of a shell block says; a command of npm must be one of the project's. */
function obey(line: string, folder: string): void {
  for (const command of line.replace(/\s#.*$/, "").split("&&").map((part) => part.trim())) {
    const [program = "", ...args] = command.split(/\s+/);
    if (program === "npx" && args[0] === "underfoot") {
      // The machine that runs the tests need not have what doctor looks for, and its Jupyter is not to be changed.
      if (args[1] === "doctor" || args[1] === "kernel") continue;
      execFileSync(process.execPath, [join(root, "dist/cli.js"), ...args.slice(1)], { cwd: folder, stdio: "pipe" });
    } else if (program === "npm") {
      const script = args[0] === "run" ? args[1] : args[0];
      expect(["ci", "install", ...scripts], command).toContain(script);
    } else throw new Error(`${command} is no command that a page may tell its reader.`);
  }
}

function obeyed(fence: Fence, folder: string): void {
  if (fence.file !== null) writeFileSync(join(folder, fence.file), fence.text);
  if (fence.language !== "sh") return;
  for (const line of fence.text.split("\n").filter((each) => each.trim() !== "")) {
    try {
      obey(line, folder);
    } catch (fault) {
      // 1: rows were set aside, as some of the demo are.
      if ((fault as { status?: number }).status !== 1) throw fault;
    }
  }
}

function notebookOf(cells: readonly Fence[]): Notebook {
  const code = cells.map(({ text, line }) => ({
    cell_type: "code" as const,
    id: `line-${line}`,
    metadata: {},
    source: text,
    outputs: [],
    execution_count: null,
  }));
  return { nbformat: 4, nbformat_minor: 5, metadata: {}, cells: code };
}

describe.each(pages)("%s", (page) => {
  const all = fences(read(page));

  test("its commands and cells run", { timeout: 180_000 }, async () => {
    const folder = place(page);
    for (const fence of all) obeyed(fence, folder);
    const cells = all.filter(({ language }) => language === "ts");
    if (cells.length === 0) return;
    const { notebook } = await runNotebook(notebookOf(cells), { folder: join(folder, "notebooks") });
    const silent = notebook.cells.filter((cell) => cell.cell_type === "code" && cell.outputs.length === 0 && /show\(|console\.log/.test(cell.source));
    expect(silent.map(({ id }) => id), "cells that show nothing").toEqual([]);
  });

  test("its fences have a language that is run or known not to be", () => {
    const known = ["ts", "sh", "csv", "json", "r", "python", "text", ...(page === "docs/methods.md" ? [""] : [])];
    expect(all.filter(({ language }) => !known.includes(language)).map(({ line }) => line)).toEqual([]);
  });

  test("its links lead somewhere", () => {
    const targets = [...read(page).matchAll(/\]\(([^)#\s]+)(?:#[^)]*)?\)/g)].flatMap(([, target]) => target ?? []);
    const inside = targets.filter((target) => !/^[a-z]+:/.test(target));
    expect(inside.filter((target) => !existsSync(join(root, page, "..", target)))).toEqual([]);
  });
});
