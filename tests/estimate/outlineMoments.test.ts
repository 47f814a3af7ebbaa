import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { outlineMoments, type OutlineMoments } from "../../src/estimate/outlineMoments.js";
import type { Point } from "../../src/estimate/Point.js";
import { EstimateError } from "../../src/estimate/EstimateError.js";
import { arbitraryMove, arbitraryOutline, movedBy, startingAt } from "./arbitraryOutline.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";
import { inventedShapes, shapeReference } from "./shapeReference.js";

type Pairs = [number, number][];
const pentagon: Pairs = [[3, 4], [5, 11], [12, 8], [9, 5], [5, 6]]; // prettier-ignore
const ell: Pairs = [[0, 0], [4, 0], [4, 2], [2, 2], [2, 4], [0, 4]]; // prettier-ignore

const ellipse = (a: number, b: number, n: number): Pairs =>
  Array.from({ length: n }, (_, i) => [a * Math.cos((2 * Math.PI * i) / n), b * Math.sin((2 * Math.PI * i) / n)]);
const values = ({ centroid, principalMoments, ...m }: OutlineMoments) => [
  ...[m.area, m.perimeter, centroid.x, centroid.y, m.ixx, m.iyy, m.ixy],
  ...[...principalMoments, m.convexity, m.perimeterConvexity],
];
const messageOf = (make: () => unknown): string => {
  try {
    make();
  } catch (fault) {
    if (fault instanceof EstimateError) return `${fault.message} ${fault.hint}`;
  }
  return "";
};

describe("known outlines", () => {
  test("area of the pentagon that is the worked example of the shoelace formula (Rosetta Code): 30, listed clockwise", () => {
    const { area, orientation } = outlineMoments(pentagon);
    expect(area).toBeCloseTo(30, 12);
    expect(orientation).toBe("clockwise");
    expect(outlineMoments([...pentagon].reverse()).orientation).toBe("anticlockwise");
  });

  test("an L from two rectangles by the parallel axis theorem: the centroid is not the mean of the corners", () => {
    // 4 x 2 about (2, 1) and 2 x 2 about (1, 3): areas 8 and 4.
    const centre = (8 * 2 + 4 * 1) / 12;
    const ixx = (4 * 2 ** 3) / 12 + 8 * (1 - centre) ** 2 + 2 ** 4 / 12 + 4 * (3 - centre) ** 2;
    const ixy = 8 * (2 - centre) * (1 - centre) + 4 * (1 - centre) * (3 - centre);
    const m = outlineMoments(ell);
    expectNear(
      [m.area, m.perimeter, m.centroid.x, m.centroid.y, m.ixx, m.iyy, m.ixy],
      [12, 16, centre, centre, ixx, ixx, ixy],
      1e-14,
    );
    expectNear([m.circularity, m.convexity], [(48 * Math.PI) / 256, 12 / 14], 1e-14);
  });

  test("a right triangle: bh³/36, hb³/36 and -b²h²/72", () => {
    const m = outlineMoments([[0, 0], [6, 0], [0, 3]]); // prettier-ignore
    expectNear([m.area, m.perimeter, m.centroid.x, m.centroid.y], [9, 9 + Math.sqrt(45), 2, 1], 1e-14);
    expectNear([m.ixx, m.iyy, m.ixy], [(6 * 27) / 36, (3 * 216) / 36, -(36 * 9) / 72], 1e-14);
  });

  test("a trapezoid, by hand from a rectangle of 5 by 5 and two triangles, and its printed values", () => {
    // Rectangle from 3 to 8, triangles to its left (base 3) and right (base 2), all 5 high: areas 25, 7.5 and 5.
    const parts = [
      { area: 25, x: 5.5, y: 2.5, ixx: (5 * 5 ** 3) / 12, iyy: (5 * 5 ** 3) / 12, ixy: 0 },
      { area: 7.5, x: 2, y: 5 / 3, ixx: (3 * 5 ** 3) / 36, iyy: (5 * 3 ** 3) / 36, ixy: (3 * 5) ** 2 / 72 },
      { area: 5, x: 8 + 2 / 3, y: 5 / 3, ixx: (2 * 5 ** 3) / 36, iyy: (5 * 2 ** 3) / 36, ixy: -((2 * 5) ** 2) / 72 },
    ];
    const sum = (of: (part: (typeof parts)[number]) => number) => parts.reduce((total, part) => total + of(part), 0);
    const [x, y] = [sum((p) => p.area * p.x) / 37.5, sum((p) => p.area * p.y) / 37.5];
    const byHand = [
      sum((p) => p.ixx + p.area * (p.y - y) ** 2),
      sum((p) => p.iyy + p.area * (p.x - x) ** 2),
      sum((p) => p.ixy + p.area * (p.x - x) * (p.y - y)),
    ];
    const m = outlineMoments([[0, 0], [10, 0], [8, 5], [3, 5]]); // prettier-ignore
    expectNear([m.ixx, m.iyy, m.ixy], byHand, 1e-13);
    // The same from an independent program in Python, to its printed digits.
    expectNear([m.area, m.perimeter, m.centroid.x, m.centroid.y], [37.5, 26.216116702, 5.2222222222, 2.2222222222], 1e-10);
    expectNear([m.ixx, m.iyy, m.ixy], [75.2314814815, 196.064814815, 7.52314814815], 1e-11);
    expectNear(m.principalMoments, [196.53140832, 74.76488798], 1e-9);
    expectNear([m.circularity, m.aspect], [0.685653044017, 1.6213140255], 1e-10);
  });

  test("360 points on a circle and on a 2:1 ellipse, and the L and the triangle, to printed digits", () => {
    const circle = outlineMoments(ellipse(1, 1, 360));
    expectNear([circle.area, circle.perimeter, circle.circularity], [3.141433158711, 6.283105558829, 0.999974615086], 1e-12);
    expectNear([outlineMoments(ellipse(2, 1, 360)).circularity], [0.841143828101], 1e-12);
    const l = outlineMoments(ell);
    expectNear([l.circularity, l.ixx, l.ixy], [0.589048622548, 14.6666666667, -5.33333333333], 1e-11);
    const triangle = outlineMoments([[0, 0], [6, 0], [0, 3]]); // prettier-ignore
    expectNear([triangle.perimeter, triangle.circularity], [15.7082039325, 0.458352191003], 1e-11);
  });

  test.each([
    [3, 0.604599788078],
    [4, 0.785398163397],
    [6, 0.906899682117],
    [8, 0.948059448969],
    [12, 0.977048616657],
    [24, 0.994281888292],
    [36, 0.997460231792],
    [72, 0.999365299812],
    [100, 0.999670991538],
    [1000, 0.99999671013],
  ])("circularity of a regular polygon of %d corners, to twelve digits", (n, wanted) => {
    expectNear([outlineMoments(ellipse(1, 1, n)).circularity], [wanted], 1e-12);
  });

  test("circularity of regular polygons is π / (n tan(π/n))", () => {
    for (const n of [3, 4, 6, 8, 12, 24, 36, 72, 100, 360, 1000]) {
      const { circularity, area, aspect } = outlineMoments(ellipse(1, 1, n));
      expectNear([circularity, area], [Math.PI / n / Math.tan(Math.PI / n), (n / 2) * Math.sin((2 * Math.PI) / n)], 1e-13);
      expect(aspect).toBeCloseTo(1, 10);
    }
  });

  test("circularity of rectangles", () => {
    for (const [a, b] of [[1, 1], [2, 1], [3, 2], [10, 1]] as const) // prettier-ignore
      expectNear([outlineMoments([[0, 0], [a, 0], [a, b], [0, b]]).circularity], [(Math.PI * a * b) / (a + b) ** 2], 1e-14); // prettier-ignore
    const printed = [0.785398163397, 0.698131700798, 0.753982236862, 0.259635756495];
    const found = [[1, 1], [2, 1], [3, 2], [10, 1]].map(([a, b]) => outlineMoments([[0, 0], [a!, 0], [a!, b!], [0, b!]]).circularity); // prettier-ignore
    expectNear(found, printed, 2e-12);
  });

  // Circumferences and circularities to printed digits, from complete elliptic integrals.
  test.each([
    [2, 1, 9.688448220548, 0.841165181006],
    [3, 2, 15.865439589291, 0.94103714756],
    [5, 4, 28.361667888974, 0.981581123477],
    [10, 1, 40.639741801009, 0.239032996946],
  ])("ellipse %d:%d, held to its circumference by quadrature (R)", (a, b, printed, round) => {
    // prettier-ignore
    const [circumference, circularity] = shapeReference(`ellipse ${a} ${b}`);
    expectNear([circumference!, circularity!], [printed, round], 1e-11);
    const m = outlineMoments(ellipse(a, b, 20_000));
    // The polygon falls short of the curve by about (2π/n)²/24.
    expectNear([m.perimeter, m.circularity, m.area], [circumference!, circularity!, Math.PI * a * b], 3e-8);
    expectNear([m.aspect, m.principalMoments[0]], [a / b, (Math.PI * a ** 3 * b) / 4], 1e-7);
    expect(m.longAxisDeg).toBeCloseTo(0, 8);
  });

  test("the circle has no long axis", () => {
    expect(outlineMoments(ellipse(5, 5, 360)).longAxisDeg).toBeNull();
    expect(Math.abs(outlineMoments(ellipse(5, 5.001, 360)).longAxisDeg!)).toBeCloseTo(90, 6);
  });

  test("the long axis of a turned ellipse", () => {
    const points = movedBy(outlineOf(ellipse(3, 1, 100)), { scale: 1, angle: 0.5, dx: 0, dy: 0 });
    expect(outlineMoments(points).longAxisDeg).toBeCloseTo((0.5 * 180) / Math.PI, 10);
  });

  test("moments triangle by triangle and hull by chull (R)", () => {
    const shapes = inventedShapes();
    const dented = shapes[1]!.map((point) => ({ ...point }));
    const middle = (key: "x" | "y") => shapes[1]!.reduce((sum, point) => sum + point[key], 0) / 16;
    dented[4] = { x: (middle("x") + dented[4]!.x) / 2, y: (middle("y") + dented[4]!.y) / 2 };
    expectNear(values(outlineMoments(shapes[0]!)), shapeReference("moments 1"), 1e-10);
    expectNear(values(outlineMoments(shapes[1]!)), shapeReference("moments 2"), 1e-10);
    expectNear(values(outlineMoments(dented)), shapeReference("moments dented"), 1e-10);
  });
});

function outlineOf(pairs: Pairs): Point[] {
  return pairs.map(([x, y]) => ({ x, y }));
}

describe("what makes no difference", () => {
  test("start, direction, repeated points, a closing point", () => {
    fc.assert(
      fc.property(arbitraryOutline, fc.nat(100), fc.nat(100), (points, start, place) => {
        const plain = outlineMoments(points);
        const turned = startingAt(points, start);
        const doubled = turned.flatMap((point, i) => (i === place % turned.length ? [point, point, { ...point }] : [point]));
        const other = outlineMoments([...doubled, turned[0]!].reverse());
        const size = plain.equivalentDiameter;
        const powers = [2, 1, 1, 1, 4, 4, 4, 4, 4, 0, 0];
        const gap = values(other).map((value, k) => (value - values(plain)[k]!) / size ** powers[k]!);
        expect(Math.max(...gap.map(Math.abs))).toBeLessThan(1e-12);
        expect(other.orientation).toBe("clockwise");
        expect([other.n, other.repeated]).toEqual([points.length, 3]);
      }),
    );
  });

  test("place and turn; scale in its power", () => {
    fc.assert(
      fc.property(arbitraryOutline, arbitraryMove, (points, move) => {
        const [m, moved] = [outlineMoments(points), outlineMoments(movedBy(points, move))];
        expectNear([moved.area, moved.perimeter], [m.area * move.scale ** 2, m.perimeter * move.scale], 1e-9);
        expectNear(moved.principalMoments, m.principalMoments.map((value) => value * move.scale ** 4), 1e-7); // prettier-ignore
        expectNear([moved.circularity, moved.aspect, moved.convexity], [m.circularity, m.aspect, m.convexity], 1e-7);
        const turn = (moved.longAxisDeg! - m.longAxisDeg! - (move.angle * 180) / Math.PI) / 180;
        expect(Math.abs(turn - Math.round(turn))).toBeLessThan(1e-6);
      }),
    );
  });

  test("a mirror turns the long axis and nothing else", () => {
    fc.assert(
      fc.property(arbitraryOutline, (points) => {
        const [m, other] = [outlineMoments(points), outlineMoments(points.map(({ x, y }) => ({ x: -x, y })))];
        expectNear([other.area, other.ixx, other.iyy], [m.area, m.ixx, m.iyy], 1e-12);
        expect((other.ixy + m.ixy) / m.ixx).toBeCloseTo(0, 12);
        expect(other.longAxisDeg! + m.longAxisDeg!).toBeCloseTo(0, 6);
      }),
    );
  });

  test("nothing is rounder than a circle, nothing fills more than its hull", () => {
    fc.assert(
      fc.property(arbitraryOutline, (points) => {
        const m = outlineMoments(points);
        expect(m.circularity).toBeLessThan(1);
        expect(m.convexity).toBeLessThanOrEqual(1);
        expect(m.aspect).toBeGreaterThanOrEqual(1);
      }),
    );
  });

  test("input is left as it was", () => {
    const points = Object.freeze(outlineOf(pentagon).map((point) => Object.freeze(point)));
    outlineMoments(points);
    expect(points).toEqual(outlineOf(pentagon));
  });
});

type Place = readonly [number, number];
const turnOf = (a: Place, b: Place, c: Place): number => (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);

/** Whether any two edges share more than the joint of neighbours. */
function pairwise(points: readonly Place[]): boolean {
  const n = points.length;
  const at = (i: number) => points[i % n]!;
  const on = (a: Place, b: Place, c: Place) =>
    turnOf(a, b, c) === 0 && (c[0] - a[0]) * (c[0] - b[0]) <= 0 && (c[1] - a[1]) * (c[1] - b[1]) <= 0;
  for (let i = 0; i < n; i += 1) {
    const [a, b, c] = [at(i), at(i + 1), at(i + 2)];
    if (on(a, b, c) || on(b, c, a)) return true;
    for (let j = i + 2; j < n && j + 1 < i + n; j += 1) {
      const [p, q] = [at(j), at(j + 1)];
      if (on(a, b, p) || on(a, b, q) || on(p, q, a) || on(p, q, b)) return true;
      if (turnOf(a, b, p) * turnOf(a, b, q) < 0 && turnOf(p, q, a) * turnOf(p, q, b) < 0) return true;
    }
  }
  return false;
}

describe("what is refused", () => {
  test("too few points, no area, no numbers", () => {
    expect(faultCode(() => outlineMoments([]))).toBe("too_few");
    expect(faultCode(() => outlineMoments([[0, 0], [1, 1], [1, 1 + 1e-15], [0, 0]]))).toBe("too_few"); // prettier-ignore
    expect(faultCode(() => outlineMoments([[0, 0], [1, 1], [2, 2], [5, 5]]))).toBe("no_variation"); // prettier-ignore
    expect(faultCode(() => outlineMoments([[0, 0], [1, NaN], [2, 2]]))).toBe("not_a_number"); // prettier-ignore
    expect(faultCode(() => outlineMoments([{ x: 0, y: 0 }, { x: 1 } as Point, { x: 1, y: 2 }]))).toBe("not_a_number"); // prettier-ignore
  });

  test("outlines that cross, touch or fold back, with their edges", () => {
    const bow: Pairs = [[0, 0], [2, 2], [2, 0], [0, 2]]; // prettier-ignore
    expect(faultCode(() => outlineMoments(bow))).toBe("self_crossing");
    expect(messageOf(() => outlineMoments(bow))).toContain("the edge of points 1-2 meets that of points 3-4.");
    expect(messageOf(() => outlineMoments([bow[0]!, ...bow]))).toContain("the edge of points 1-3 meets that of points 4-5.");
    const touching: Pairs = [[0, 0], [4, 0], [4, 4], [2, 0], [0, 4]]; // prettier-ignore
    expect(faultCode(() => outlineMoments(touching))).toBe("self_crossing");
    const spike: Pairs = [[0, 0], [4, 0], [4, 2], [7, 2], [4, 2], [4, 4], [0, 4]]; // prettier-ignore
    expect(faultCode(() => outlineMoments(spike))).toBe("self_crossing");
    const twice = [...ellipse(3, 2, 20), ...ellipse(3, 2, 20)];
    expect(faultCode(() => outlineMoments(twice))).toBe("self_crossing");
    expect(faultCode(() => outlineMoments([...ellipse(3, 2, 20), ...ellipse(2, 1, 20)]))).toBe("self_crossing");
  });

  test("polygons on a grid are refused exactly when a search of all pairs of edges in whole numbers finds a meeting", () => {
    const place = fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 }));
    const seen = { simple: 0, crossing: 0 };
    fc.assert(
      fc.property(fc.uniqueArray(place, { minLength: 3, maxLength: 8, selector: String }), (points) => {
        const wanted = pairwise(points);
        seen[wanted ? "crossing" : "simple"] += 1;
        let found: string | null = null;
        try {
          outlineMoments(points);
        } catch (fault) {
          found = (fault as EstimateError).code;
        }
        const flat = points.every((point) => turnOf(points[0]!, points[1]!, point) === 0);
        expect(found).toBe(flat ? "no_variation" : wanted ? "self_crossing" : null);
      }),
      { numRuns: 3000 },
    );
    expect(Math.min(seen.simple, seen.crossing)).toBeGreaterThan(100);
  });

  test("a comb of 20,000 points is simple and is seen to be so in under two seconds", () => {
    const up = Array.from({ length: 10_000 }, (_, i): [number, number] => [i, i % 2 === 0 ? 0 : 5]);
    const back = up.map(([x, y]): [number, number] => [x, y + 2]).reverse();
    const start = performance.now();
    expect(outlineMoments([...up, ...back]).area).toBeCloseTo(2 * 9999, 6);
    expect(performance.now() - start).toBeLessThan(2000);
  });

  test("open outlines, unless closed on purpose or told to", () => {
    const half = ellipse(60, 70, 100).slice(0, 80);
    expect(faultCode(() => outlineMoments(half))).toBe("open_outline");
    expect(messageOf(() => outlineMoments(half))).toMatch(
      /a gap of \d+(\.\d+)? between its last and first point, \d+(\.\d)? times its median step/,
    );
    const closed = outlineMoments(half, { open: "close" });
    expect(closed.note).toContain("a straight line was put across");
    const repeated = outlineMoments([...half, half[0]!]);
    expect(repeated.note).toBeNull();
    expect(repeated.area).toBeCloseTo(closed.area, 9);
    expect(outlineMoments(half, { gapSteps: 100 }).note).toBeNull();
    expect(outlineMoments([[0, 0], [10, 0], [10, 1], [0, 1]]).area).toBe(10); // prettier-ignore
    expect(faultCode(() => outlineMoments(half, { gapSteps: 0 }))).toBe("out_of_range");
  });

  test("the wrong scale, with the unit that would fit", () => {
    const size = { expectedSizeMm: [70, 200] as const };
    expect(outlineMoments(ellipse(60, 65, 50), size).n).toBe(50);
    expect(faultCode(() => outlineMoments(ellipse(6, 6.5, 50), size))).toBe("out_of_range");
    expect(messageOf(() => outlineMoments(ellipse(6, 6, 50), size))).toMatch(/12 wide \(centimetres\?\), where 70 to 200 mm/);
    expect(messageOf(() => outlineMoments(ellipse(2.4, 2.4, 50), size))).toContain("multiply x and y by 25.4");
    expect(messageOf(() => outlineMoments(ellipse(6e5, 6e5, 50), size))).toContain("is expected. Check the unit");
    expect(faultCode(() => outlineMoments(ellipse(60, 65, 50), { expectedSizeMm: [200, 70] }))).toBe("out_of_range");
  });
});
