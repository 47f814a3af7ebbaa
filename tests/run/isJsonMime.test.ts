import { expect, test } from "vitest";
import { isJsonMime } from "../../src/run/isJsonMime.js";

test("JSON mime types are those of the nbformat 4.5 schema", () => {
  expect(["application/json", "application/vnd.vegalite.v5+json", "application/geo+json"].map(isJsonMime)).toEqual([
    true,
    true,
    true,
  ]);
  expect(["text/json", "application/jsonx", "image/svg+xml", "text/plain"].map(isJsonMime)).toEqual([false, false, false, false]);
});
