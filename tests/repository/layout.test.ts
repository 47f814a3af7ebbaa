import { existsSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { root, trackedFiles } from "./trackedFiles.js";

const files = trackedFiles().filter((path) => existsSync(`${root}/${path}`));
const sources = files.filter((path) => /^src\/.*\.ts$/.test(path));
const text = (path: string) => readFileSync(`${root}/${path}`, "utf8");
const lines = (path: string) => text(path).split("\n").length - 1;

test("the top level is closed", () => {
  const allowed = ["README.md", "DEVELOPERS.md", "LICENSE", "package.json", "package-lock.json", "tsconfig.json"];
  const folders = ["src", "notebooks", "data-demo", "tests", "docs"];
  const top = [...new Set(files.map((path) => path.split("/")[0] ?? ""))];
  const strangers = top.filter((name) => !name.startsWith(".") && !allowed.includes(name) && !folders.includes(name));
  expect(strangers).toEqual([]);
});

// A room may import from itself and from the rooms before it.
const rooms = ["study", "read", "derive", "estimate", "simulate", "chart", "answer", "show", "run"];

function roomOf(path: string): number {
  const room = path.split("/")[1] ?? "";
  return rooms.includes(room) ? rooms.indexOf(room) : rooms.length;
}

test("every source file stands in a known room", () => {
  const outside = sources.filter((path) => roomOf(path) === rooms.length);
  expect(outside).toEqual(["src/cli.ts", "src/index.ts"]);
});

test("imports go one way through the house", () => {
  const wrong = sources.flatMap((path) => {
    const imports = [...text(path).matchAll(/(?:from|import\()\s*"(\.[^"]*)"/g)].map((match) => match[1] ?? "");
    return imports
      .map((target) => new URL(target, `file:///${path}`).pathname.slice(1))
      .filter((target) => roomOf(target) > roomOf(path))
      .map((target) => `${path} imports ${target}`);
  });
  expect(wrong).toEqual([]);
});

test("files are read and written only in read, show, run and the command line", () => {
  const pure = sources.filter((path) => !/^src\/(read|show|run)\/|^src\/cli\.ts/.test(path));
  const wrong = pure.filter((path) => /"node:(fs|fs\/promises|child_process|net|http|https)"/.test(text(path)));
  expect(wrong).toEqual([]);
});

test("a file that makes something public is named after it", () => {
  const wrong = sources.flatMap((path) => {
    if (path === "src/index.ts" || path === "src/cli.ts") return [];
    const name = (path.split("/").at(-1) ?? "").replace(/\.ts$/, "");
    const made = [...text(path).matchAll(/^export (?:async )?(?:function\*?|const|class|interface|type) (\w+)/gm)].map(
      (match) => match[1],
    );
    const functions = [...text(path).matchAll(/^export (?:async )?function\*? (\w+)/gm)].map((match) => match[1]);
    if (!made.includes(name)) return [`${path} makes ${made.join(", ")}`];
    return functions.length > 1 ? [`${path} has ${functions.length} public functions: ${functions.join(", ")}`] : [];
  });
  expect(wrong).toEqual([]);
});

test("tests mirror the source by path", () => {
  const strangers = files
    .filter((path) => /^tests\/(study|read|derive|estimate|simulate|chart|answer|show|run)\/.*\.test\.ts$/.test(path))
    .map((path) => path.replace(/^tests/, "src").replace(/(\.\w+)?\.test\.ts$/, ".ts"))
    .filter((path) => !sources.includes(path));
  expect(strangers, "tests without a source file of that path").toEqual([]);
});

test("every public function that stands in the index has a test of its own", () => {
  const exported = [...text("src/index.ts").matchAll(/export \{ (\w+)[^}]*\} from "\.\/([^"]+)\.js"/g)].map(
    (match) => match[2] ?? "",
  );
  const untested = exported.filter((path) => {
    const functions = /^export (?:async )?function|^export class/m.test(text(`src/${path}.ts`));
    return functions && !files.some((file) => file === `tests/${path}.test.ts`);
  });
  expect(untested).toEqual([]);
});

test("files are small", () => {
  const counts = sources.map(lines).sort((a, b) => a - b);
  expect(counts[Math.floor(counts.length / 2)]).toBeLessThan(80);
  // The index is written by a command and only re-exports.
  expect(sources.filter((path) => path !== "src/index.ts" && lines(path) > 400)).toEqual([]);
  expect(sources.filter((path) => /(utils?|helpers?|common|misc|manager)(\/|\.ts$)/i.test(path))).toEqual([]);
});

test("no two files differ in upper and lower case only, since some disks cannot hold both", () => {
  const seen = new Map<string, string>();
  const clashes = files.flatMap((path) => {
    const other = seen.get(path.toLowerCase());
    seen.set(path.toLowerCase(), path);
    return other === undefined ? [] : [`${other} and ${path}`];
  });
  expect(clashes).toEqual([]);
});

test("the lock file names no registry host", () => {
  expect(text("package-lock.json")).not.toMatch(/"resolved": "http/);
});
