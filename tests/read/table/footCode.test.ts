import { expect, test } from "vitest";
import { footCode } from "../../../src/read/table/footCode.js";

// Near is left, off is right: common practice, no source.
test.each([
  ["LF", "LF NF lf Lf left-fore near_fore NearFore? l.f"],
  ["RH", "RH OH oh off-hind right_hind"],
])("%s is written in many ways", (code, ways) => {
  const read = ways.split(" ").filter((way) => footCode(way) === code);
  expect(read).toEqual(ways.split(" ").filter((way) => !/[?.]/.test(way)));
});

test("two words, with any case and spaces", () => {
  expect(["near fore", "Off  Fore", "LEFT hind", "right back", "near front"].map(footCode)).toEqual([
    "LF",
    "RF",
    "LH",
    "RH",
    "LF",
  ]);
});

test("a specimen of unknown side", () => {
  expect(["F", "h", "fore", "Hind"].map(footCode)).toEqual(["F", "H", "F", "H"]);
});

test("a specimen of unknown end", () => {
  expect(["U", "u", "Unknown"].map(footCode)).toEqual(["U", "U", "U"]);
});

test("a specimen of known side, and one that is called a specimen besides", () => {
  expect(["LF specimen", "near fore specimen", "OH-Specimen", "rh_specimen ", "LF_specimen"].map(footCode)).toEqual([
    ...["LF_specimen", "LF_specimen", "RH_specimen", "RH_specimen", "LF_specimen"],
  ]);
  expect(["F specimen", "hind specimen", "unknown specimen"].map(footCode)).toEqual(["F", "H", "U"]);
});

test("anything else comes back as it is", () => {
  const others = [
    "",
    "L",
    "FL",
    "fore near",
    "LFX",
    "near fore left",
    "__proto__",
    "LF outer claw",
    "N",
    "3",
    "specimen",
    "LF outer claw specimen",
    "L specimen",
    "LF specimens",
  ];
  expect(others.map(footCode)).toEqual(others);
});
