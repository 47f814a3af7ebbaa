import { expect, test } from "vitest";
import { footPatterns } from "../../../src/read/draft/footPatterns.js";

const patterns = (...header: string[]) => footPatterns(header)?.patterns.map(({ pattern, at }) => [pattern, ...at]);

test("headers alike but for the foot, wherever it stands and however it is spelt", () => {
  expect(patterns("Date", "NF thrush", "OF thrush", "NH thrush", "OH thrush")).toEqual([
    ["{foot} thrush", ["LF", 1], ["RF", 2], ["LH", 3], ["RH", 4]],
  ]);
  expect(patterns("Thrush near fore", "Thrush off-fore")).toEqual([["Thrush {foot}", ["LF", 0], ["RF", 1]]]);
  expect(patterns("toe_lf", "toe_rf", "width_lf", "width_rf")?.map(([pattern]) => pattern)).toEqual([
    "toe_{foot}",
    "width_{foot}",
  ]);
  expect(footPatterns(["Front Left toe", "Front Right toe"])?.spellings).toEqual({ LF: ["Front Left"], RF: ["Front Right"] });
});

test("one header that seems to name a foot is none", () => {
  expect(footPatterns(["Date of visit", "Horse", "Left"])).toBeNull();
  expect(footPatterns(["Date of visit", "NF", "OF"])?.patterns.map(({ pattern }) => pattern)).toEqual(["{foot}"]);
});
