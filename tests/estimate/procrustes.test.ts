import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { mirrored } from "../../src/estimate/mirrored.js";
import { procrustes, type ProcrustesFit } from "../../src/estimate/procrustes.js";
import { arbitraryMove, arbitraryOutline, movedBy } from "./arbitraryOutline.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";
import { inventedShapes, shapeReference } from "./shapeReference.js";

const trapezoid = [[0, 0], [10, 0], [8, 5], [3, 5]] as const; // prettier-ignore
const four = [[1, 1], [11.5, 2], [8.2, 6.9], [3.1, 5.6]] as const; // prettier-ignore
const hookA = [[1, 3], [1, 2], [1, 1], [2, 1]] as const; // prettier-ignore
const hookB = [[4, -2], [4, -4], [4, -6], [2, -6]] as const; // prettier-ignore

/** In the order of the R script, whose rotation stands on the right of the landmarks. */
const inOrder = (fit: ProcrustesFit) => [
  ...[fit.disparity, fit.fullDistance, fit.partialDistance, fit.riemannianDistance, fit.ss, fit.scale],
  ...fit.rotation.flat(),
  ...[fit.translation.x, fit.translation.y, ...fit.centroidSizes],
];

describe("by singular values (R)", () => {
  test("two quadrilaterals; disparity as scipy.spatial.procrustes 1.10.1 and vegan 2.6-4 (symmetric) give it", () => {
    const fit = procrustes(trapezoid, four);
    expectNear(inOrder(fit), shapeReference("procrustes four"), 1e-10);
    expectNear([fit.disparity, 1 - fit.disparity], [0.006728022096, 0.9966303116 ** 2], 1e-9);
    expectNear([fit.riemannianDistance, fit.ss], [0.0821167780348, 0.590383938959], 1e-10);
    // To printed digits, by singular values in R and in Python; R turns by a matrix on the right, so that its sine has the other sign.
    expectNear([fit.fullDistance, fit.partialDistance, fit.scale], [0.0820245213, 0.082093708, 0.9712421998], 1e-8);
    expectNear([fit.rotation[0][0], Math.abs(fit.rotation[0][1])], [0.9884070974, 0.1518269076], 1e-9);
    expectNear([fit.translation.x, fit.translation.y], [-1.033307178, -0.3425417354], 1e-9);
    expectNear(fit.centroidSizes, [9.3674969976, 9.6123618326], 1e-10);
  });

  test("the example of the scipy documentation: equal only in a mirror, and the mirror must be asked for", () => {
    const straight = procrustes(hookA, hookB);
    expectNear(inOrder(straight), shapeReference("procrustes hooked"), 1e-10);
    expect(straight.reflected).toBe(false);
    expect(straight.fullDistance).toBeCloseTo(0.6998542122, 9);
    const mirror = procrustes(hookA, hookB, { reflection: true });
    expect(mirror.reflected).toBe(true);
    expect(mirror.disparity).toBeCloseTo(0, 14);
    const wanted = shapeReference("procrustes hooked mirrored");
    [mirror.ss, mirror.scale, ...mirror.rotation.flat()].forEach((value, k) => { expect(value).toBeCloseTo(wanted[k]!, 12); }); // prettier-ignore
  });

  test("an equilateral triangle and a 3-4-5 one", () => {
    const fit = procrustes([[0, 0], [1, 0], [0.5, Math.sqrt(3) / 2]], [[0, 0], [4, 0], [0, 3]]); // prettier-ignore
    expectNear(inOrder(fit), shapeReference("procrustes triangles"), 1e-10);
    expectNear([fit.disparity, fit.riemannianDistance], [0.0843078062, 0.2946010026], 1e-9);
  });

  test("a front and a hind foot", () => {
    const [front, hind] = inventedShapes();
    expectNear(inOrder(procrustes(front!, hind!)), shapeReference("procrustes 1 2"), 1e-10);
  });
});

describe("properties", () => {
  test("a moved copy is the same shape, and the fit undoes the move", () => {
    fc.assert(
      fc.property(arbitraryOutline, arbitraryMove, (points, move) => {
        const moved = movedBy(points, move);
        const fit = procrustes(points, moved);
        expect(fit.fullDistance).toBeLessThan(1e-9);
        expect(fit.scale * move.scale).toBeCloseTo(1, 9);
        fit.fitted.forEach(({ x, y }, i) => {
          expect(Math.hypot(x - points[i]!.x, y - points[i]!.y)).toBeLessThan(1e-8);
        });
      }),
    );
  });

  test("fitted is scale × rotation × landmark + translation, and ss is what it leaves", () => {
    fc.assert(
      fc.property(arbitraryOutline, arbitraryOutline, fc.boolean(), (one, other, reflection) => {
        const n = Math.min(one.length, other.length);
        const [a, b] = [one.slice(0, n), mirrored(other.slice(0, n))];
        const { rotation, scale, translation, fitted, ss } = procrustes(a, b, { reflection });
        let left = 0;
        fitted.forEach(({ x, y }, i) => {
          const { x: bx, y: by } = b[i]!;
          expect(x).toBeCloseTo(scale * (rotation[0][0] * bx + rotation[0][1] * by) + translation.x, 8);
          expect(y).toBeCloseTo(scale * (rotation[1][0] * bx + rotation[1][1] * by) + translation.y, 8);
          left += (x - a[i]!.x) ** 2 + (y - a[i]!.y) ** 2;
        });
        expectNear([left], [ss], 1e-9);
      }),
    );
  });

  test("distances do not know which comes first, and a mirror asked for is never worse", () => {
    fc.assert(
      fc.property(arbitraryOutline, arbitraryOutline, (one, other) => {
        const n = Math.min(one.length, other.length);
        const [a, b] = [one.slice(0, n), other.slice(0, n)];
        const fit = procrustes(a, b);
        expectNear([procrustes(b, a).disparity], [fit.disparity], 1e-9);
        expect(procrustes(a, b, { reflection: true }).disparity).toBeLessThanOrEqual(fit.disparity + 1e-14);
        // Between like shapes the three differ by rounding alone.
        expect(fit.fullDistance).toBeLessThanOrEqual(fit.partialDistance + 1e-14);
        expect(fit.partialDistance).toBeLessThanOrEqual(fit.riemannianDistance + 1e-14);
      }),
    );
  });
});

test("sets that do not correspond or have no size are refused", () => {
  expect(faultCode(() => procrustes(hookA, four.slice(1)))).toBe("length_mismatch");
  expect(faultCode(() => procrustes([[1, 1]], [[2, 2]]))).toBe("too_few");
  expect(faultCode(() => procrustes([[1, 1], [1, 1]], [[0, 0], [2, 2]]))).toBe("no_variation"); // prettier-ignore
  expect(faultCode(() => procrustes([[1, NaN], [1, 1]], [[0, 0], [2, 2]]))).toBe("not_a_number"); // prettier-ignore
});
