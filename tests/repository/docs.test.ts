import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { dictionaryPage } from "../../.tools/dictionaryPage.js";
import { methodsPage } from "../../.tools/methodsPage.js";
import { root } from "./trackedFiles.js";

const page = (name: string) => readFileSync(`${root}/docs/${name}`, "utf8");

test("the data dictionary is what the column tables say (npm run docs)", () => {
  expect(page("data-dictionary.md")).toBe(dictionaryPage());
});

test("the methods page is what the doc comments say (npm run docs)", () => {
  expect(page("methods.md")).toBe(methodsPage());
});
