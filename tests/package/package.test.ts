import { execFileSync, spawnSync } from "node:child_process";
import { createRequire } from "node:module";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { publint } from "publint";
import { formatMessage } from "publint/utils";
import { afterAll, beforeAll, expect, test } from "vitest";
import { root } from "../repository/trackedFiles.js";

interface Packed {
  readonly filename: string;
  readonly size: number;
  readonly files: readonly { readonly path: string }[];
}

interface Manifest {
  readonly dependencies: Readonly<Record<string, string>>;
  readonly peerDependencies: Readonly<Record<string, string>>;
  readonly peerDependenciesMeta: Readonly<Record<string, { readonly optional: boolean }>>;
}

const folder = mkdtempSync(join(tmpdir(), "underfoot-package-"));
const npm = process.platform === "win32" ? "npm.cmd" : "npm";
let packed: Packed;
let tarball = "";

beforeAll(() => {
  // The build has been made by the command that runs these tests.
  const args = ["pack", "--json", "--ignore-scripts", "--pack-destination", folder];
  [packed] = JSON.parse(
    execFileSync(npm, args, { cwd: resolve(root), encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] }),
  ) as [Packed];
  tarball = join(folder, packed.filename);
});

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

test("holds the built library, its licence and read-me, and nothing else", () => {
  const strange = packed.files
    .map(({ path }) => path)
    .filter((path) => !/^(dist\/.*\.(js|d\.ts)|package\.json|README\.md|LICENSE)$/.test(path));
  expect(strange).toEqual([]);
  expect(packed.files.map(({ path }) => path)).toEqual(
    expect.arrayContaining(["dist/index.js", "dist/index.d.ts", "dist/cli.js"]),
  );
  // No figure to hold to but the wish to be lean; the drawing libraries it depends on are ten times this.
  expect(packed.size).toBeLessThan(1_000_000);
});

test("danfo, the kernel and its messaging come only to those who ask for them", () => {
  const manifest = JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as Manifest;
  for (const name of ["danfojs-node", "tslab", "zeromq"]) {
    expect(manifest.dependencies).not.toHaveProperty(name);
    expect(manifest.peerDependencies).toHaveProperty(name);
    expect(manifest.peerDependenciesMeta[name]).toEqual({ optional: true });
  }
});

test("publint finds nothing", async () => {
  const { buffer, byteOffset, byteLength } = readFileSync(tarball);
  const { messages, pkg } = await publint({ pack: { tarball: buffer.slice(byteOffset, byteOffset + byteLength) } });
  expect(messages.map((message) => formatMessage(message, pkg))).toEqual([]);
});

test("attw finds its types by every way of resolving them, that of the kernel (node10) among them", () => {
  const attw = createRequire(import.meta.url)
    .resolve("@arethetypeswrong/cli/package.json")
    .replace("package.json", "dist/index.js");
  // Node 20.19 and later require an ES module as they import it, which is how a cell does it; attw does not know that yet.
  const args = [attw, tarball, "--format", "json", "--ignore-rules", "cjs-resolves-to-esm"];
  const run = spawnSync(process.execPath, args, { encoding: "utf8" });
  expect(run.stderr).toBe("");
  const { analysis } = JSON.parse(run.stdout) as { analysis: { types: unknown; problems: { kind: string }[] } };
  expect(analysis.types).toMatchObject({ kind: "included" });
  expect(analysis.problems.map(({ kind }) => kind).filter((kind) => kind !== "CJSResolvesToESM")).toEqual([]);
  expect(run.status).toBe(0);
});

// What a reader does in an empty folder.
const program = `
import { runNotebook } from "underfoot";
const cell = (id, source) => ({ cell_type: "code", id, metadata: {}, source, outputs: [], execution_count: null });
const rows = '[{ band: "dry", cases: 3, n: 40, estimate: 0.075, lower: 0.02, upper: 0.2 }, { band: "wet", cases: 9, n: 40, estimate: 0.225, lower: 0.12, upper: 0.37 }]';
const options = '{ bandTitle: "Ground", level: 0.95, unit: "feet", finding: "thrush", caseDefinition: "grade 1 or more" }';
const cells = [
  cell("a", 'import { prevalenceByBandChart, readStudy, show, version } from "underfoot";'),
  cell("b", 'const study = await readStudy("my-yards"); console.log(version, study.visits.length);'),
  cell("c", \`await show(prevalenceByBandChart(\${rows}, \${options}));\`),
];
const run = await runNotebook({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells }, { folder: "." });
console.log(JSON.stringify({ cells: run.notebook.cells.map((cell) => cell.outputs), warnings: run.warnings }));
`;

test("installed into an empty folder, a fresh kernel imports it and shows a chart", () => {
  const place = join(folder, "empty");
  const run = (command: string, args: readonly string[]) =>
    execFileSync(command, args, { cwd: place, encoding: "utf8", stdio: ["ignore", "pipe", "inherit"] });
  execFileSync(process.execPath, ["-e", `require("node:fs").mkdirSync(${JSON.stringify(place)})`]);
  writeFileSync(join(place, "package.json"), JSON.stringify({ name: "my-season", private: true, type: "module" }));
  run(npm, ["install", "--no-audit", "--no-fund", "--prefer-offline", tarball, "tslab@1.0.22", "zeromq@6"]);
  const installed = createRequire(join(place, "package.json"));
  expect(() => installed.resolve("danfojs-node")).toThrow("Cannot find module");
  const cli = join(place, "node_modules", ".bin", process.platform === "win32" ? "underfoot.cmd" : "underfoot");
  run(cli, ["new", "my-yards"]);
  writeFileSync(join(place, "my-yards", "visits.csv"), "visit_date,horse_id,foot,thrush_grade\n2026-01-05,Fern,NF,1\n");
  writeFileSync(join(place, "run.mjs"), program);
  const said = JSON.parse(run(process.execPath, ["run.mjs"])) as {
    cells: { output_type: string; text?: string; data?: Record<string, unknown> }[][];
    warnings: unknown[];
  };
  expect(said.warnings).toEqual([]);
  expect(said.cells[1]).toEqual([
    { output_type: "stream", name: "stdout", text: expect.stringMatching(/^\d+\.\d+\.\d+ 1\n$/) as string },
  ]);
  expect(Object.keys(said.cells[2]?.[0]?.data ?? {}).sort()).toEqual([
    "application/vnd.vegalite.v5+json",
    "image/png",
    "text/plain",
  ]);
});
