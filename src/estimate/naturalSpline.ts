import { EstimateError } from "./EstimateError.js";
import { requireNumber } from "./numeric/requireNumber.js";

/** Where a spline bends. */
export interface SplineKnots {
  /** Inner knots, in order, between the boundary knots. */
  readonly knots: readonly number[];
  /** Boundary knots: outside them the spline is a straight line. */
  readonly boundary: readonly [number, number];
  /** Whether constants are in the span; no when left out, since a regression has an intercept of its own. */
  readonly intercept?: boolean;
}

/**
 * Basis of the natural cubic splines with these knots: cubic pieces that join smoothly, straight beyond the boundary knots. A number goes in, its
 * values in the basis come out: as many as inner knots, and one more, and another with `intercept`.
 *
 * Method: cubic B-splines on the knots, turned by a QR decomposition so that those whose second derivative is not 0 at a boundary knot fall
 * away. The columns are those of R `splines::ns`, signs included.
 *
 * Errors: `not_a_number`; `out_of_range` for knots out of order, equal or not within the boundary.
 *
 * Source: de Boor C (1978) A Practical Guide to Splines (B-splines); Hastie TJ (1992) in Statistical Models in S, chapter 7 (natural splines).
 */
export function naturalSpline({ knots, boundary, intercept = false }: SplineKnots): (value: number) => number[] {
  const [low, high] = boundary;
  requireOrder([low, ...knots, high]);
  const whole = [...Array<number>(4).fill(low), ...knots, ...Array<number>(4).fill(high)];
  const size = knots.length + 4;
  const first = intercept ? 0 : 1;
  const at = (value: number, derivative: number) =>
    Array.from({ length: size }, (_, i) => bSpline(whole, i, 3, value, derivative)).slice(first);
  const mirrors = reflections([at(low, 2), at(high, 2)]);
  const edges = [low, high].map((edge) => ({ edge, value: at(edge, 0), slope: at(edge, 1) }));
  return (value) => {
    requireNumber("value of the spline", value);
    const out = value < low ? edges[0]! : value > high ? edges[1]! : null;
    const basis = out === null ? at(value, 0) : out.value.map((base, i) => base + (value - out.edge) * out.slope[i]!);
    return mirrors.reduce(reflected, basis).slice(2);
  };
}

function requireOrder(places: readonly number[]): void {
  places.forEach((place) => requireNumber("knot", place));
  if (places.every((place, i) => i === 0 || place > places[i - 1]!)) return;
  throw new EstimateError(
    "out_of_range",
    `The knots ${places.slice(1, -1).join(", ") || "(none)"} between ${places[0]!} and ${places.at(-1)!} are not in rising order.`,
    "Give different knots in rising order, all of them between the boundary knots.",
  );
}

/** Derivative of the B-spline of this degree that starts at knot i; at the last knot from the left. */
function bSpline(knots: readonly number[], i: number, degree: number, x: number, derivative: number): number {
  const last = knots.at(-1)!;
  if (degree === 0) {
    const [from, to] = [knots[i]!, knots[i + 1]!];
    return (x >= from && x < to) || (x === last && to === last && from < to) ? 1 : 0;
  }
  const part = (at: number, share: (width: number) => number) => {
    const width = knots[at + degree]! - knots[at]!;
    return width === 0 ? 0 : share(width);
  };
  if (derivative > 0) {
    const slope = (at: number) => part(at, (width) => (degree / width) * bSpline(knots, at, degree - 1, x, derivative - 1));
    return slope(i) - slope(i + 1);
  }
  const rise = part(i, (width) => ((x - knots[i]!) / width) * bSpline(knots, i, degree - 1, x, 0));
  const fall = part(i + 1, (width) => ((knots[i + degree + 1]! - x) / width) * bSpline(knots, i + 1, degree - 1, x, 0));
  return rise + fall;
}

/** Householder vectors of two columns, each scaled so that its leading entry is 1 plus a share of the length, as LINPACK does. */
function reflections(columns: readonly (readonly number[])[]): number[][] {
  const found: number[][] = [];
  for (const [place, column] of columns.entries()) {
    const turned = found.reduce(reflected, [...column]);
    const length = Math.hypot(...turned.slice(place)) * (turned[place]! < 0 ? -1 : 1);
    const mirror = turned.map((value, i) => (i < place ? 0 : value / length));
    mirror[place]! += 1;
    found.push(mirror);
  }
  return found;
}

function reflected(vector: readonly number[], mirror: readonly number[]): number[] {
  const lead = mirror.find((value) => value !== 0)!;
  const share = -mirror.reduce((sum, value, i) => sum + value * vector[i]!, 0) / lead;
  return vector.map((value, i) => value + share * mirror[i]!);
}
