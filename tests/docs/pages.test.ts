import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { describe, expect, test } from "vitest";
import type { CodeCell } from "../../src/run/Notebook.js";
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

function codeCell(id: string, source: string): CodeCell {
  return { cell_type: "code", id: id.replace(/\W+/g, "-"), metadata: {}, source, outputs: [], execution_count: null };
}

describe("what the pages tell their reader to type", () => {
  const written = pages.map((page) => ({ page, folder: place(page), all: fences(read(page)) }));

  test("commands do what they say, files are written", { timeout: 240_000 }, () => {
    for (const { folder, all } of written) for (const fence of all) obeyed(fence, folder);
  });

  // One kernel for all, in the folder of each page in turn, for a kernel takes longer to start than most cells to run.
  test("cells run, and those that show or print something do", { timeout: 240_000 }, async () => {
    const cells = written.flatMap(({ page, folder, all }) => {
      const own = all.filter(({ language }) => language === "ts");
      const enter = codeCell(`${page} folder`, `globalThis.process.chdir(${JSON.stringify(join(folder, "notebooks"))});`);
      return own.length === 0 ? [] : [enter, ...own.map(({ line, text }) => codeCell(`${page} line ${line}`, text))];
    });
    const { notebook } = await runNotebook({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells }, { folder: join(root, "notebooks") });
    const code = notebook.cells.filter((cell) => cell.cell_type === "code");
    expect(code.filter(({ id }) => !id.endsWith("folder")).length).toBeGreaterThan(20);
    const silent = code.filter((cell) => cell.outputs.length === 0 && /show\(|console\.log/.test(cell.source));
    expect(silent.map(({ id }) => id)).toEqual([]);
  });
});

describe.each(pages)("%s", (page) => {
  const all = fences(read(page));

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
