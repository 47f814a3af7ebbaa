import { expect, test } from "vitest";
import { nameUuid } from "../../../src/show/calendar/nameUuid.js";

// Expected: Python 3.11.7, uuid.uuid5(uuid.NAMESPACE_DNS, name); the first is also the example in the documentation of its uuid module.
test.each([
  ["python.org", "886313e1-3b8a-5372-9b90-0c9aee199e5d"],
  ["www.example.com", "2ed6657d-e927-568b-95e1-2665a8aea6a2"],
  ["é", "ebfe0af8-3997-5ade-b634-ba92cf69f557"],
])("%s", (name, uuid) => {
  expect(nameUuid("6ba7b810-9dad-11d1-80b4-00c04fd430c8", name)).toBe(uuid);
});

test("another name, another UUID", () => {
  const namespace = "6ba7b810-9dad-11d1-80b4-00c04fd430c8";
  expect(nameUuid(namespace, "é")).not.toBe(nameUuid(namespace, "e"));
  expect(nameUuid(namespace, "é")).toMatch(/^[\da-f]{8}-[\da-f]{4}-5[\da-f]{3}-[89ab][\da-f]{3}-[\da-f]{12}$/);
});
