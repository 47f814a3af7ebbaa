import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { root, trackedFiles } from "./trackedFiles.js";

const page = readFileSync(`${root}/DEVELOPERS.md`, "utf8");
const named = (folder: string) =>
  [...page.matchAll(new RegExp(`^\\| \`${folder}/([\\w-]+)/\``, "gm"))].map(([, name]) => name ?? "").sort();
const folders = (path: string) => [
  ...new Set(
    trackedFiles().flatMap((file) =>
      file.startsWith(`${path}/`) && file.split("/").length > 2 ? [file.split("/")[1] ?? ""] : [],
    ),
  ),
];

test("the map of DEVELOPERS.md names every room of src and no other", () => {
  expect(named("src")).toEqual(folders("src").sort());
});

test("it names every folder of tests that does not mirror a room", () => {
  const rooms = folders("src");
  expect(named("tests")).toEqual(
    folders("tests")
      .filter((name) => !rooms.includes(name))
      .sort(),
  );
});

test("every command it names is a script of the package", () => {
  const { scripts } = JSON.parse(readFileSync(`${root}/package.json`, "utf8")) as { scripts: Record<string, string> };
  const called = [...page.matchAll(/`npm run ([\w:-]+)/g)].map(([, name]) => name ?? "");
  expect(called.length).toBeGreaterThan(5);
  expect(called.filter((name) => !(name in scripts))).toEqual([]);
});

test("the gallery shows every chart that an answer draws", () => {
  const gallery = readFileSync(`${root}/docs/gallery.md`, "utf8");
  const charts = readdirSync(`${root}/src/chart`).flatMap((file) => /^(\w+Chart)\.ts$/.exec(file)?.[1] ?? []);
  const answers = readdirSync(`${root}/src/answer`).filter((file) => file.endsWith(".ts"));
  const used = charts.filter((chart) =>
    answers.some((file) => readFileSync(`${root}/src/answer/${file}`, "utf8").includes(`/${chart}.js"`)),
  );
  expect(
    used.filter((chart) => !gallery.includes(`\`${chart}\``)),
    "npm run docs",
  ).toEqual([]);
});
