import { execFileSync, spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join, resolve } from "node:path";
import type TypeScript from "typescript";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { runNotebook } from "../../src/run/runNotebook.js";
import { codeCell, notebookOf } from "../run/notebookOf.js";
import { root, trackedFiles } from "./trackedFiles.js";

vi.setConfig({ testTimeout: 120_000, hookTimeout: 180_000 });

// The compiler of the notebook kernel, resolved as the kernel resolves it.
const kernel = createRequire(createRequire(import.meta.url).resolve("tslab/package.json"));
const ts = kernel("@tslab/typescript-for-tslab") as typeof TypeScript;

const index = readFileSync(`${root}/src/index.ts`, "utf8");
const exported = (pattern: RegExp) =>
  [...index.matchAll(pattern)]
    .flatMap((match) => (match[1] ?? "").split(",").map((name) => name.trim()))
    .filter((name) => name !== "");
const values = exported(/^export \{([^}]+)\} from/gm);
const types = exported(/^export type \{([^}]+)\} from/gm);

// What a reader's own program looks like; the lines that expect an error prove that the types are really there.
const use = `
import { dateOfDay, dayNumber, defaultSettings, readStudy, seasonReview, show, StudyError } from "underfoot";
import type { FootVisit, Review, Settings, Study } from "underfoot";

export const next: string = dateOfDay(dayNumber("2025-01-31") + 1);
export const settings: Settings = { ...defaultSettings, caseGrade: 2 };
export async function review(folder: string): Promise<Review> {
  const study: Study = await readStudy(folder);
  const graded = study.visits.filter((visit: FootVisit) => visit.thrushGrade !== null);
  await show(String(graded.length));
  return seasonReview(study);
}
export const hint: string = new StudyError("a", "It is so.", "Do this.").hint;
// @ts-expect-error a day is a text
export const wrong = () => dayNumber(20250131);
// @ts-expect-error there is no such grade
export const wrongSettings: Settings = { ...defaultSettings, caseGrade: 7 };
`;
const everything = `
import { ${values.join(", ")} } from "underfoot";
import type { ${types.join(", ")} } from "underfoot";
export const all = { ${values.join(", ")} };
`;

let scratch = "";
let complaintsOfKernel: string[] = [];

/** Whether dist/ was built after the last change of a source file. */
function distIsFresh(): boolean {
  const built = [`${root}/dist/index.js`, `${root}/dist/index.d.ts`];
  if (!built.every((path) => existsSync(path))) return false;
  const oldest = Math.min(...built.map((path) => statSync(path).mtimeMs));
  const sources = trackedFiles().filter((path) => /^src\/.*\.ts$/.test(path) && existsSync(`${root}/${path}`));
  return sources.every((path) => statSync(`${root}/${path}`).mtimeMs < oldest);
}

beforeAll(() => {
  // Below node_modules, so that the packages underfoot needs are found as in any project.
  scratch = mkdtempSync(resolve(root, "node_modules/.consumer-"));
  const installed = join(scratch, "node_modules/underfoot");
  mkdirSync(installed, { recursive: true });
  cpSync(`${root}/package.json`, join(installed, "package.json"));
  if (distIsFresh()) symlinkSync(resolve(root, "dist"), join(installed, "dist"));
  else {
    const build = [
      "-p",
      ".config/tsconfig.build.json",
      "--noCheck",
      "--emitDeclarationOnly",
      "false",
      "--outDir",
      join(installed, "dist"),
    ];
    execFileSync(process.execPath, ["node_modules/typescript/bin/tsc", ...build], { cwd: root });
  }
  writeFileSync(join(scratch, "package.json"), "{}");
  writeFileSync(join(scratch, "use.ts"), use);
  writeFileSync(join(scratch, "everything.ts"), everything);
  complaintsOfKernel = complaints(true);
});
afterAll(() => {
  rmSync(scratch, { recursive: true, force: true });
});

/** What the kernel's compiler, set as the kernel sets it, has against these files and against our own declarations. */
function complaints(skipLibCheck: boolean): string[] {
  const options: TypeScript.CompilerOptions = {
    module: ts.ModuleKind.CommonJS,
    moduleResolution: ts.ModuleResolutionKind.Node10,
    esModuleInterop: true,
    target: ts.ScriptTarget.ES2022,
    lib: ["lib.es2022.d.ts"],
    strict: false,
    skipLibCheck,
    typeRoots: [resolve(root, "node_modules/@types")],
    types: ["node"],
    outDir: join(scratch, "out"),
  };
  const program = ts.createProgram(
    ["use.ts", "everything.ts"].map((name) => join(scratch, name)),
    options,
  );
  if (skipLibCheck) program.emit();
  // Declarations of other packages are theirs to mend.
  const ours = (path: string | undefined) =>
    path === undefined || path.startsWith(scratch) || path.startsWith(resolve(root, "dist"));
  return ts
    .getPreEmitDiagnostics(program)
    .filter((found) => ours(found.file?.fileName))
    .map((found) => `${found.file?.fileName ?? "options"}: ${ts.flattenDiagnosticMessageText(found.messageText, "\n")}`);
}

test("the kernel's compiler is TypeScript 5.0.4", () => {
  expect(ts.version).toBe("5.0.4");
});

test("a program that uses the library compiles with the kernel's compiler, declarations included", () => {
  expect(values.length).toBeGreaterThan(20);
  expect(complaintsOfKernel).toEqual([]);
  // The kernel passes over faults in declarations; with them, too.
  expect(complaints(false)).toEqual([]);
});

test("what is exported can be asked for with require, as cells do, and is there", () => {
  const script = `
    const { all } = require("./out/everything.js");
    const { next, hint } = require("./out/use.js");
    console.log(JSON.stringify({ next, hint, there: Object.keys(all).filter((name) => all[name] !== undefined) }));`;
  const run = spawnSync(process.execPath, ["--no-warnings", "-e", script], { cwd: scratch, encoding: "utf8" });
  expect(run.stderr).toBe("");
  expect(JSON.parse(run.stdout)).toEqual({ next: "2025-02-01", hint: "Do this.", there: values });
});

test("a cell of a notebook imports it, with its types", async () => {
  const cell =
    'import { dayNumber, prevalence } from "underfoot";\nconst day: number = dayNumber("1970-01-02");\nconsole.log(day, typeof prevalence);';
  const { notebook, warnings } = await runNotebook(notebookOf(cell), { folder: scratch });
  expect(warnings).toEqual([]);
  expect(notebook.cells).toEqual([
    { ...codeCell(cell, "c1"), execution_count: 1, outputs: [{ output_type: "stream", name: "stdout", text: "1 function\n" }] },
  ]);
  const wrong = notebookOf('import { dayNumber } from "underfoot";\ndayNumber(3);');
  await expect(runNotebook(wrong, { folder: scratch })).rejects.toThrow(
    /Argument of type 'number' is not assignable to parameter of type 'string'/,
  );
});
