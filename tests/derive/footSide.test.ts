import { expect, test } from "vitest";
import { footSide } from "../../src/derive/footSide.js";

test("left and right of the horse; a specimen has no side", () => {
  expect((["LF", "LH", "RF", "RH", "F", "H"] as const).map(footSide)).toEqual(["left", "left", "right", "right", null, null]);
});
