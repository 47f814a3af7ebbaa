import type { FootLandmarks } from "./FootLandmarks.js";
import { EstimateError } from "./EstimateError.js";
import type { OutlineOptions } from "./OutlineOptions.js";
import { requireOneOf } from "./numeric/requireOneOf.js";
import { requireCount } from "./numeric/requireCount.js";
import type { Points } from "./Points.js";
import { fourierSums } from "./shape/fourierSums.js";
import { normalisation } from "./shape/normalisation.js";
import { ringOf } from "./shape/ringOf.js";

/** One harmonic: x gains `a` cos(nθ) + `b` sin(nθ), y gains `c` cos(nθ) + `d` sin(nθ), for θ from 0 to 2π along the outline. */
export interface FourierHarmonic {
  readonly n: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  /** (a² + b² + c² + d²) / 2. Moving the start, turning the outline or tracing it backwards does not change it. */
  readonly power: number;
}

/** An outline as a sum of ellipses. */
export interface EllipticFourier {
  readonly harmonics: readonly FourierHarmonic[];
  /** Mean of x and of y along the outline (not the centre of the area); 0 when normalised. */
  readonly a0: number;
  readonly c0: number;
  readonly normalised: "none" | "ellipse" | "landmarks";
  /** What the normalisation undid: phase in radians along the outline, turn in degrees, size divided by; null without one. */
  readonly undone: { readonly phase: number; readonly turnDeg: number; readonly size: number } | null;
  /** Direction the coefficients are for; a normalised outline is always taken anticlockwise. */
  readonly orientation: "anticlockwise" | "clockwise";
  /** What a reader must know; null when nothing. */
  readonly note: string | null;
}

/** How many harmonics, and what to take out of them. */
export interface FourierOptions extends OutlineOptions {
  /** 10 when left out. */
  readonly harmonics?: number;
  /** Nothing (the default), place, turn, size and start by the first ellipse, or the same by landmarks of the foot; `true` is "ellipse", `false` "none". */
  readonly normalise?: "none" | "ellipse" | boolean | FootLandmarks;
}

/**
 * Elliptic Fourier descriptors of a closed outline.
 *
 * Method: x and y as periodic functions of the length along the polygon, integrated exactly, so points put in along an edge change
 * nothing. `normalise: "ellipse"` takes out the place, starts at an end of the long axis of the first ellipse, turns that axis onto x
 * and divides by its half length: a, b and c of the first harmonic become 1, 0 and 0. The axis has two ends, so that the sign of all even
 * harmonics is arbitrary, and it is ill-determined for a nearly round foot, which `note` then says. Landmarks know no such doubt: the
 * outline starts at the place nearest the toe, the toe points along x, and the divisor is the length from the toe to the middle
 * between the heels. A left foot stays a mirror image of a right one: see `mirrored`.
 *
 * Errors (`EstimateError`): those of `outlineMoments`; `not_a_count` and `out_of_range` for harmonics below 1 or above 1000,
 * landmarks that coincide or another word as `normalise`; `no_variation` when the first ellipse has no size.
 *
 * Source: Kuhl FP, Giardina CR (1982) Elliptic Fourier features of a closed contour, Comput Graph Image Process 18:236-258.
 */
export function ellipticFourier(points: Points, options: FourierOptions = {}): EllipticFourier {
  const normalise = normalisedBy(options.normalise);
  const count = requireCount("number of harmonics", options.harmonics ?? 10);
  if (count < 1 || count > 1000) {
    throw new EstimateError("out_of_range", `${count} harmonics were asked for.`, "Ask for 1 to 1000.");
  }
  const ring = ringOf(points, options);
  const sums = fourierSums(ring, count);
  const turn = normalise === "none" ? null : normalisation(ring, sums, normalise);
  if (turn === null) {
    const { a0, c0 } = sums;
    const orientation = ring.signedArea > 0 ? "anticlockwise" : "clockwise";
    return { harmonics: harmonicsOf(sums.table), a0, c0, normalised: "none", undone: null, orientation, note: ring.note };
  }
  const notes = [ring.note, turn.note].filter((note) => note !== null);
  return {
    harmonics: harmonicsOf(turn.table),
    a0: 0,
    c0: 0,
    normalised: normalise === "ellipse" ? "ellipse" : "landmarks",
    undone: { phase: turn.phase, turnDeg: (turn.angle * 180) / Math.PI, size: turn.size },
    orientation: "anticlockwise",
    note: notes.length === 0 ? null : notes.join(" "),
  };
}

function normalisedBy(asked: FourierOptions["normalise"] = "none"): "none" | "ellipse" | FootLandmarks {
  if (typeof asked === "boolean") return asked ? "ellipse" : "none";
  if (typeof asked === "string") requireOneOf("normalise", asked, ["none", "ellipse"]);
  return asked;
}

function harmonicsOf(table: Float64Array): readonly FourierHarmonic[] {
  const harmonics: FourierHarmonic[] = [];
  for (let k = 0; k < table.length; k += 4) {
    const [a, b, c, d] = [table[k]!, table[k + 1]!, table[k + 2]!, table[k + 3]!];
    harmonics.push({ n: k / 4 + 1, a, b, c, d, power: (a * a + b * b + c * c + d * d) / 2 });
  }
  return harmonics;
}
