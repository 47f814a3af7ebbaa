import fc from "fast-check";
import { expect, test } from "vitest";
import { ellipticFourier } from "../../src/estimate/ellipticFourier.js";
import { outlineFromFourier } from "../../src/estimate/outlineFromFourier.js";
import { outlineMoments } from "../../src/estimate/outlineMoments.js";
import { arbitraryOutline } from "./arbitraryOutline.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

test("one harmonic draws an ellipse about the means", () => {
  const harmonics = [{ n: 1, a: 3, b: 0, c: 0, d: 2, power: 6.5 }];
  const drawn = outlineFromFourier({ harmonics, a0: 10, c0: -1 }, { points: 4 });
  expectNear(
    drawn.flatMap(({ x, y }) => [x, y + 10]),
    [13, 9, 10, 11, 7, 9, 10, 7],
    1e-14,
  );
});

test("with many harmonics the outline comes back", () => {
  fc.assert(
    fc.property(arbitraryOutline, (points) => {
      const fourier = ellipticFourier(points, { harmonics: 200 });
      const [m, again] = [outlineMoments(points), outlineMoments(outlineFromFourier(fourier, { points: 1000 }))];
      // A series cut off at 200 rounds the corners off.
      expectNear([again.area, again.perimeter], [m.area, m.perimeter], 2e-3);
      const [first] = outlineFromFourier(fourier);
      expect(Math.hypot(first!.x - points[0]!.x, first!.y - points[0]!.y)).toBeLessThan(0.002 * m.perimeter);
    }),
    { numRuns: 20 },
  );
});

test("the area is π Σ n (a d - b c) of the harmonics used", () => {
  const square = [[1, 1], [-1, 1], [-1, -1], [1, -1]] as const; // prettier-ignore
  const fourier = ellipticFourier(square, { harmonics: 5 });
  for (const harmonics of [1, 3, 5]) {
    const area = Math.PI * fourier.harmonics.slice(0, harmonics).reduce((sum, { n, a, b, c, d }) => sum + n * (a * d - b * c), 0);
    // A polygon of 4000 points falls short of the curve by about (2π/4000)²/6.
    expectNear([outlineMoments(outlineFromFourier(fourier, { harmonics, points: 4000 })).area], [area], 1e-5);
  }
});

test("impossible drawings are refused", () => {
  const fourier = { harmonics: [], a0: 0, c0: 0 };
  expect(faultCode(() => outlineFromFourier(fourier, { points: 2 }))).toBe("out_of_range");
  expect(faultCode(() => outlineFromFourier(fourier, { harmonics: 1 }))).toBe("out_of_range");
  expect(faultCode(() => outlineFromFourier(fourier, { points: 2.5 }))).toBe("not_a_count");
});
