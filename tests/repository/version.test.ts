import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { version } from "../../src/study/version.js";
import { root } from "./trackedFiles.js";

test("the version in the library is that of the package", () => {
  expect(JSON.parse(readFileSync(`${root}/package.json`, "utf8"))).toMatchObject({ version });
});
