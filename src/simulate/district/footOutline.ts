import type { FootMeasures } from "./FootState.js";
import { plantedOutlines } from "./plantedOutlines.js";

/** A place on the ground surface, mm: x towards the outer side, y from the heels to the toe. */
export interface FootPlace {
  readonly x: number;
  readonly y: number;
}

/** What a foot looks like from below. */
export interface FootForm {
  readonly hind: boolean;
  readonly measures: Pick<FootMeasures, "hoofWidthMm" | "hoofLengthMm" | "frogWidthMm" | "frogLengthMm">;
  /** Exponent of the toe; see `plantedOutlines`. */
  readonly roundness: number;
  /** Share of half the width by which the outer border lies further out than the inner one lies in. */
  readonly bulge: number;
}

/** An outline as it is, before anybody traces it. */
export interface FootOutline {
  readonly wall: readonly FootPlace[];
  readonly frog: readonly FootPlace[];
  readonly toe: FootPlace;
  readonly heelMedial: FootPlace;
  readonly heelLateral: FootPlace;
}

const TOE_POINTS = 31;
const SIDE_POINTS = 6;

/**
 * The ground surface of a foot with these measures, from the inner heel around the toe to the outer heel and back along the heels: a
 * superellipse in front of the widest place, a curve that runs in to the heels behind it. A bulge moves the border outwards on the outer
 * and inwards on the inner side, so that width and length stay what they are.
 */
export function footOutline({ hind, measures, roundness, bulge }: FootForm): FootOutline {
  const half = measures.hoofWidthMm / 2;
  const length = measures.hoofLengthMm;
  const widest = length * (hind ? plantedOutlines.hindWidest : plantedOutlines.foreWidest);
  const heel = half * (hind ? plantedOutlines.hindHeels : plantedOutlines.foreHeels);
  const place = (x: number, y: number): FootPlace => {
    const share = Math.sin(Math.PI * Math.min(1, Math.max(0, y / length)));
    return { x: x * (1 + Math.sign(x) * bulge * share), y };
  };
  const side = Array.from({ length: SIDE_POINTS }, (_, step) => {
    const y = (widest * step) / SIDE_POINTS;
    return { x: heel + (half - heel) * (1 - ((widest - y) / widest) ** 2), y };
  });
  const power = 2 / roundness;
  const toe = Array.from({ length: TOE_POINTS }, (_, step) => {
    const angle = Math.PI - (Math.PI * step) / (TOE_POINTS - 1);
    const cosine = Math.cos(angle);
    const x = half * Math.sign(cosine) * Math.abs(cosine) ** power;
    return place(x, widest + (length - widest) * Math.abs(Math.sin(angle)) ** power);
  });
  const backPoints = plantedOutlines.wallPoints - TOE_POINTS - 2 * SIDE_POINTS;
  const back = Array.from({ length: backPoints }, (_, step) => {
    const share = 1 - (2 * (step + 1)) / (backPoints + 1);
    return { x: heel * share, y: 5 * (1 - share ** 2) };
  });
  return {
    wall: [...side.map(({ x, y }) => place(-x, y)), ...toe, ...side.map(({ x, y }) => place(x, y)).reverse(), ...back],
    frog: frogRing(measures.frogWidthMm / 2, measures.frogLengthMm),
    toe: { x: 0, y: length },
    heelMedial: { x: -heel, y: 0 },
    heelLateral: { x: heel, y: 0 },
  };
}

/** A wedge with its tip to the toe and a notch for the central cleft at its base, which lies a little behind the heels. */
function frogRing(half: number, length: number): FootPlace[] {
  const sidePoints = (plantedOutlines.frogPoints - 2) / 2;
  const base = -6;
  const side = Array.from({ length: sidePoints }, (_, step) => {
    const share = step / sidePoints;
    return { x: half * (1 - share) ** 0.8, y: base + length * share };
  });
  return [...side.map(({ x, y }) => ({ x: -x, y })), { x: 0, y: base + length }, ...side.reverse(), { x: 0, y: base + 5 }];
}
