import { expect, test } from "vitest";
import { footShoeing } from "../../src/derive/footShoeing.js";

test("what was found on the foot comes before what is usual", () => {
  expect(footShoeing({ foot: "LH", shoeState: "tight" }, { shod: "fronts" })).toBe("shod");
  expect(footShoeing({ foot: "LF", shoeState: "bare" }, { shod: "all" })).toBe("bare");
  expect(footShoeing({ foot: "LF", shoeState: "lost" }, null)).toBe("shod");
});

test("fronts means shod in front and bare behind", () => {
  const usual = (foot: "RF" | "RH", shod: "bare" | "fronts" | "all" | null) => footShoeing({ foot, shoeState: null }, { shod });
  expect([usual("RF", "fronts"), usual("RH", "fronts")]).toEqual(["shod", "bare"]);
  expect([usual("RF", "all"), usual("RH", "bare"), usual("RH", null)]).toEqual(["shod", "bare", null]);
  expect(footShoeing({ foot: "RF", shoeState: null }, null)).toBeNull();
});
