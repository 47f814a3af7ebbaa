import { expect, test } from "vitest";
import { reversedEnds } from "../../../src/answer/fabric/reversedEnds.js";
import { footVisit } from "../../footVisit.js";

/** Horses of one observer, each seen twice, so many of them wider behind. */
const herd = (horses: number, reversed: number, observerId = "A") => ({
  visits: Array.from({ length: horses }, (_, horse) =>
    ["2025-01-06", "2025-02-17"].flatMap((visitDate) =>
      (["LF", "RF", "LH", "RH"] as const).map((foot) =>
        footVisit({
          horseId: `${observerId} ${String(horse)}`,
          visitDate,
          foot,
          observerId,
          hoofWidthMm: foot.endsWith("F") === horse < reversed ? 110 : 120,
        }),
      ),
    ),
  ).flat(),
});

test("eight horses of eight that are wider behind are told: a fair coin gives that once in 256 times", () => {
  const [issue] = reversedEnds(herd(8, 8));
  expect(issue?.code).toBe("ends_reversed_throughout");
  expect(issue?.message).toContain("where A is the observer, 8 of 8 horses are wider behind than in front, by 10.0 mm");
  expect(issue?.message).toContain("1 in 260 times");
});

test("seven of seven are not enough, however often they were seen, nor eight of eight among two observers", () => {
  expect(reversedEnds(herd(7, 7))).toEqual([]);
  expect(reversedEnds({ visits: [...herd(8, 8).visits, ...herd(8, 0, "B").visits] })).toEqual([]);
});

test("more than chance but less than three quarters is a herd of its own kind", () => {
  // 73 of 100: one-sided sign test 2e-6.
  expect(reversedEnds(herd(100, 73))).toEqual([]);
  expect(reversedEnds(herd(100, 76))).toHaveLength(1);
});

test("wider in front, as horses are, or unmeasured, raises nothing", () => {
  expect(reversedEnds(herd(30, 0))).toEqual([]);
  expect(reversedEnds({ visits: [footVisit({ thrushGrade: 0 })] })).toEqual([]);
});
