import { expect, test } from "vitest";
import { footEnd } from "../../src/derive/footEnd.js";

test("fore and hind, specimens included", () => {
  expect((["LF", "RF", "F", "LH", "RH", "H"] as const).map(footEnd)).toEqual(["fore", "fore", "fore", "hind", "hind", "hind"]);
});
