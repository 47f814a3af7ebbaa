import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ellipticFourier, type EllipticFourier, type FourierOptions } from "../../src/estimate/ellipticFourier.js";
import type { Point } from "../../src/estimate/Point.js";
import { arbitraryMove, arbitraryOutline, movedBy, startingAt } from "./arbitraryOutline.js";
import { faultCode } from "./faultCode.js";
import { footOutline } from "./footOutline.js";
import { expectNear } from "./reference.js";
import { inventedShapes, shapeReference } from "./shapeReference.js";

const trapezoid: Point[] = [{ x: 0, y: 0 }, { x: 10, y: 0 }, { x: 8, y: 5 }, { x: 3, y: 5 }]; // prettier-ignore
const rows = ({ harmonics }: EllipticFourier) => harmonics.map(({ a, b, c, d }) => [a, b, c, d]);
/** Largest difference between coefficients of two outlines. */
const gap = (one: readonly number[][], other: readonly number[][]): number =>
  Math.max(...one.flatMap((row, n) => row.map((value, k) => Math.abs(value - other[n]![k]!))));

describe("known coefficients", () => {
  test("a trapezoid, by quadrature of the definition (R) and by the Python package pyefd to ten digits", () => {
    const found = ellipticFourier(trapezoid, { harmonics: 6 });
    const pyefd = [
      [-4.1752101228, 1.4365172609, -1.0899445461, -2.59781083],
      [-0.2181557635, -0.2138915885, -0.4352717554, 0.4841011009],
      [-0.0570349427, 0.0046498148, -0.2647338212, -0.1348028282],
      [-0.2990467728, -0.0014073962, 0.0153437151, 0.1209851905],
      [-0.0087004687, -0.0368024231, -0.0068370446, -0.0221339468],
      [-0.0819610674, 0.0614794815, -0.0733656246, -0.0650658799],
    ];
    expect(gap(rows(found), pyefd)).toBeLessThan(6e-11);
    expectNear(rows(found).flat(), shapeReference("fourier trapezoid"), 1e-9);
    expectNear([found.a0, found.c0], shapeReference("fourier means trapezoid"), 1e-12);
    // The mean along the border as printed by pyefd, to ten digits; not the centre of the area, which is (5.2222, 2.2222).
    expectNear([found.a0, found.c0], [5.1385532281, 2.0231940664], 1e-10);
    const power = [13.7162808164, 0.2585784629, 0.045765202, 0.0521518995, 0.0009833866, 0.0100567134];
    found.harmonics.forEach((harmonic, k) => {
      expect(harmonic.power).toBeCloseTo(power[k]!, 9);
    }); // ten digits printed
  });

  test("normalised by its first ellipse", () => {
    const found = ellipticFourier(trapezoid, { harmonics: 4, normalise: "ellipse" });
    const wanted = [
      [1, 0, 0, 0.6347716588],
      [0.0251631987, 0.0645164485, 0.1406560847, -0.0432244212],
      [0.0103119739, 0.0136549103, 0.015272612, 0.0644587602],
      [0.029128666, 0.0605981191, 0.0215121328, -0.0187307752],
    ]; // definition of Kuhl and Giardina, computed apart; ten digits
    expect(gap(rows(found), wanted)).toBeLessThan(6e-11);
    expect(found.undone!.size).toBeCloseTo(4.421955804717, 11);
  });

  test("a foot of 16 landmarks by quadrature (R)", () => {
    const found = ellipticFourier(inventedShapes()[1]!, { harmonics: 10 });
    const wanted = shapeReference("fourier 2");
    rows(found).flat().forEach((value, k) => { expect(value).toBeCloseTo(wanted[k]!, 10); }); // prettier-ignore
  });

  test("a square: 8/π² in the first harmonic, nothing in the even ones, 1/n² in the odd ones", () => {
    const { harmonics } = ellipticFourier([[1, 1], [-1, 1], [-1, -1], [1, -1]], { harmonics: 6 }); // prettier-ignore
    const first = 8 / Math.PI ** 2;
    expectNear(
      [harmonics[0]!.a, harmonics[2]!.power, harmonics[4]!.power],
      [0.8105694691, 2 * 0.0900632743 ** 2, 2 * 0.0324227788 ** 2],
      3e-9,
    ); // analytic, ten decimals
    const sizes = [first, 0, first / 9, 0, first / 25, 0];
    expect([harmonics[0]!.a, harmonics[0]!.b, harmonics[0]!.c, harmonics[0]!.d].map(Math.sign)).toEqual([1, -1, 1, 1]);
    harmonics.forEach(({ a, b, c, d }, k) => {
      for (const value of [a, b, c, d]) expect(Math.abs(value)).toBeCloseTo(sizes[k]!, 13);
    });
  });

  test("an ellipse is its own first harmonic", () => {
    const points = Array.from({ length: 4000 }, (_, i) => ({ x: 5 + 3 * Math.cos(i / 636.6), y: 2 * Math.sin(i / 636.6) }));
    const circle = points.map(({ x, y }) => ({ x, y: y * 1.5 }));
    const { harmonics, a0 } = ellipticFourier(circle, { harmonics: 3 });
    expect(harmonics[0]!.power).toBeCloseTo(9, 2);
    expect(harmonics[1]!.power + harmonics[2]!.power).toBeLessThan(1e-5);
    expect(a0).toBeCloseTo(5, 2);
  });
});

describe("what makes no difference", () => {
  test("normalised by the ellipse: scale, turn, shift and direction; the start but for the sign of even harmonics", () => {
    fc.assert(
      fc.property(arbitraryOutline, arbitraryMove, fc.nat(100), fc.boolean(), (points, move, start, backwards) => {
        const plain = ellipticFourier(points, { normalise: "ellipse" });
        const moved = startingAt(movedBy(points, move), start);
        const other = ellipticFourier(backwards ? moved.reverse() : moved, { normalise: "ellipse" });
        const flipped = rows(plain).map((row, k) => (k % 2 === 1 ? row.map((value) => -value) : row));
        expect(Math.min(gap(rows(other), rows(plain)), gap(rows(other), flipped))).toBeLessThan(1e-7);
      }),
    );
  });

  test("scale 3.7, turn 0.6, shift (-12, 40) to 1e-12", () => {
    const moved = movedBy(trapezoid, { scale: 3.7, angle: 0.6, dx: -12, dy: 40 });
    const [a, b] = [trapezoid, moved].map((points) => rows(ellipticFourier(points, { normalise: "ellipse" })));
    expect(gap(a!, b!)).toBeLessThan(1e-12);
  });

  test("normalised by landmarks: everything, the start included", () => {
    const plan = { length: 130, halfWidth: 62, roundness: 2, widest: 0.6, heel: 0.8, lateralExcess: 0.05 };
    const { points, landmarks } = footOutline(plan);
    const plain = rows(ellipticFourier(points, { normalise: landmarks }));
    const marks = [landmarks.toe, landmarks.heelMedial, landmarks.heelLateral].map((mark) => {
      const [x, y] = mark as readonly [number, number];
      return { x, y };
    });
    fc.assert(
      fc.property(arbitraryMove, fc.nat(300), fc.boolean(), (move, start, backwards) => {
        const moved = startingAt(movedBy(points, move), start);
        const [toe, heelMedial, heelLateral] = movedBy(marks, move);
        const normalise = { toe: toe!, heelMedial: heelMedial!, heelLateral: heelLateral! };
        const other = ellipticFourier(backwards ? moved.reverse() : moved, { normalise });
        expect(gap(rows(other), plain)).toBeLessThan(1e-7);
      }),
    );
  });

  test("as traced: power does not know the start, backwards turns b and d, points along an edge change nothing", () => {
    fc.assert(
      fc.property(arbitraryOutline, fc.nat(100), (points, start) => {
        const plain = ellipticFourier(points);
        const other = ellipticFourier(startingAt(points, start));
        plain.harmonics.forEach(({ power }, k) => {
          expect(other.harmonics[k]!.power).toBeCloseTo(power, 8);
        });
        const back = ellipticFourier([points[0]!, ...points.slice(1).reverse()]);
        expect(gap(rows(back), rows(plain).map(([a, b, c, d]) => [a!, -b!, c!, -d!]))).toBeLessThan(1e-11); // prettier-ignore
        expect([plain.orientation, back.orientation]).toEqual(["anticlockwise", "clockwise"]);
        const more = points.flatMap((p, i) => {
          const q = points[(i + 1) % points.length]!;
          return [p, { x: p.x + 0.3 * (q.x - p.x), y: p.y + 0.3 * (q.y - p.y) }];
        });
        expect(gap(rows(ellipticFourier(more)), rows(plain))).toBeLessThan(1e-11);
      }),
    );
  });
});

test("a nearly round foot is told to use landmarks, a long one is not", () => {
  const ring = (stretch: number) =>
    Array.from({ length: 60 }, (_, i): [number, number] => [stretch * Math.cos(i / 9.55), Math.sin(i / 9.55)]);
  expect(ellipticFourier(ring(1.02), { normalise: "ellipse" }).note).toContain("nearly a circle");
  expect(ellipticFourier(ring(1.3), { normalise: "ellipse" }).note).toBeNull();
});

test("true and false stand for the first ellipse and for nothing; other words are refused", () => {
  const of = (normalise: FourierOptions["normalise"]) => ellipticFourier(trapezoid, { harmonics: 4, normalise: normalise! });
  expect(of(true)).toEqual(of("ellipse"));
  expect(of(false)).toEqual(of("none"));
  expect(faultCode(() => of("size" as "ellipse"))).toBe("out_of_range");
});

test("bad harmonics, outlines and landmarks are refused", () => {
  expect(faultCode(() => ellipticFourier(trapezoid, { harmonics: 0 }))).toBe("out_of_range");
  expect(faultCode(() => ellipticFourier(trapezoid, { harmonics: 2.5 }))).toBe("not_a_count");
  expect(faultCode(() => ellipticFourier([[0, 0], [2, 2], [2, 0], [0, 2]]))).toBe("self_crossing"); // prettier-ignore
  const normalise = { toe: [1, 0], heelMedial: [0, 0], heelLateral: [2, 0] } as const;
  expect(faultCode(() => ellipticFourier(trapezoid, { normalise }))).toBe("out_of_range");
});
