import type { Foot } from "../../study/Foot.js";

/** Measures of a foot as they are, before anybody reads a gauge. */
export interface FootMeasures {
  hoofWidthMm: number;
  hoofLengthMm: number;
  toeLengthMm: number;
  heelHeightMm: number;
  toeAngleDeg: number;
  heelAngleDeg: number;
  frogWidthMm: number;
  frogLengthMm: number;
  medialWallAngleDeg: number;
  lateralWallAngleDeg: number;
}

/** One foot of a simulated horse as time goes on. */
export interface FootState {
  readonly foot: Extract<Foot, "LF" | "RF" | "LH" | "RH">;
  readonly hind: boolean;
  readonly shod: boolean;
  /** Log odds of thrush against the average foot of its horse. */
  readonly effect: number;
  readonly hornColour: "dark" | "light" | "striped";
  /** Just after a trim. */
  readonly trimmed: Readonly<FootMeasures>;
  /** Tendency of the outer wall to flare, 0 to 1. */
  readonly flareTendency: number;
  /** Toe length beyond `trimmed` that trims have left on. */
  creepMm: number;
  /** Highest grade at the last look; null before the first one. */
  lastGrade: number | null;
  crack: { readonly site: "toe" | "quarter" | "heel"; readonly from: "ground" | "coronet" } | null;
  /** Day number on which pus broke out at the coronet. */
  burstDay: number | null;
  /** Day number on which a ring left the coronet, the same on all feet of a horse. */
  readonly ringDay: number | null;
}
