import { expect, test } from "vitest";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";
import type { Point } from "../../src/estimate/Point.js";
import { shapeDifference, type ShapePair } from "../../src/estimate/shapeDifference.js";
import { movedBy } from "./arbitraryOutline.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";
import { inventedShapes, shapeReference } from "./shapeReference.js";

const shapes = inventedShapes();
const pairs = Array.from({ length: 30 }, (_, i): ShapePair => {
  return { first: shapes[2 * i]!, second: shapes[2 * i + 1]!, cluster: `horse ${Math.floor(i / 2)}` };
});
const options = (seed: string, permutations = 999) => ({ random: seededRandom(seed), permutations });

test("front against hind in 15 horses: the distance by complex numbers (R), and the planted difference is seen", () => {
  const found = shapeDifference(pairs, options("planted"));
  expectNear([found.distance], shapeReference("difference distance"), 1e-9);
  expect(found).toMatchObject({ clusters: 15, pairs: 30, atLeast: 0, p: 0.001, note: null });
  expect(found.distance).toBeGreaterThan(2 * found.chanceDistance);
  expectNear([Math.hypot(...found.difference.flatMap(({ x, y }) => [x, y]))], [found.distance], 1e-12);
  found.difference.forEach(({ x }, k) => {
    expect(x).toBeCloseTo(found.meanSecond[k]!.x - found.meanFirst[k]!.x, 12);
  });
});

test("fronts of four horses against fronts of four others: p by all 16 swaps (R)", () => {
  // Horse 1 is set against horse 5, and so on; two pairs each.
  const null4 = [0, 1, 2, 3].flatMap((h) =>
    [0, 2].map((side): ShapePair => ({ first: shapes[4 * h + side]!, second: shapes[4 * h + 16 + side]!, cluster: h })),
  );
  // The R script superimposes both feet of all eight horses; fronts alone lie a little differently.
  const found = shapeDifference(null4, options("null", 9999));
  expect(found.distance / shapeReference("null distance")[0]!).toBeCloseTo(1, 1);
  expect(found.chanceDistance / shapeReference("null chance")[0]!).toBeCloseTo(1, 1);
  // Three standard errors of 9999 swaps are 0.01; the share itself moves by a sixteenth if one swap changes sides.
  expect(Math.abs(found.p - shapeReference("null p")[0]!)).toBeLessThan(0.0725);
  expect(found.note).toContain("only 8 different ways");
});

/** A ring of eight landmarks; `hind` pulls the toe out. */
function ring(random: ReturnType<typeof seededRandom>, own: number, hind: number): Point[] {
  const points = Array.from({ length: 8 }, (_, i) => {
    const radius = 60 * (1 + own * Math.cos((2 * Math.PI * i) / 8) + (i === 2 ? hind : 0)) + random.normal(0, 1);
    return { x: radius * Math.cos((Math.PI * i) / 4), y: radius * Math.sin((Math.PI * i) / 4) };
  });
  return movedBy(points, { scale: random.uniform() + 0.5, angle: random.normal(), dx: random.normal(0, 50), dy: 0 });
}

test("without a difference p falls below 0.1 about one time in ten, however unlike the horses are", () => {
  let below = 0;
  for (let study = 0; study < 300; study += 1) {
    const random = seededRandom(`level ${study}`);
    const herd = Array.from({ length: 8 }, () => {
      const own = random.normal(0, 0.08);
      return { first: ring(random, own, 0), second: ring(random, own, 0) };
    });
    if (shapeDifference(herd, { random, permutations: 99 }).p <= 0.1) below += 1;
  }
  // Binomial of 300 at 0.1: 30, three standard errors 15.6.
  expect(below).toBeGreaterThan(14);
  expect(below).toBeLessThan(46);
});

test("pairs of one horse are swapped together: ten copies of two horses are still two horses", () => {
  const random = seededRandom("copies");
  const two = [0, 1].map(() => ({ first: ring(random, 0, 0), second: ring(random, 0, 0.2) }));
  const copies = Array.from({ length: 20 }, (_, i): ShapePair => ({ ...two[i % 2]!, cluster: i % 2 }));
  const found = shapeDifference(copies, options("copies"));
  expect(found.clusters).toBe(2);
  // Half of the swaps turn both horses or none.
  expect(found.p).toBeGreaterThan(0.4);
});

test("equal seeds give equal numbers; how the feet lie makes no difference", () => {
  const one = shapeDifference(pairs, options("same"));
  expect(shapeDifference(pairs, options("same"))).toEqual(one);
  const moved = pairs.map((pair, i) => ({
    ...pair,
    second: movedBy(pair.second as Point[], { scale: 3, angle: i, dx: i, dy: 1 }),
  }));
  expectNear([shapeDifference(moved, options("same")).distance], [one.distance], 1e-8);
});

test("too few horses or swaps are refused", () => {
  expect(faultCode(() => shapeDifference(pairs.slice(0, 2), options("few")))).toBe("too_few");
  expect(faultCode(() => shapeDifference([], options("none")))).toBe("too_few");
  expect(faultCode(() => shapeDifference(pairs, options("swaps", 50)))).toBe("too_few");
  expect(faultCode(() => shapeDifference([...pairs, { first: [[0, 0]], second: [[0, 0]] }], options("odd")))).toBe(
    "length_mismatch",
  );
});
