import { EstimateError } from "../estimate/EstimateError.js";
import { seededRandom } from "../estimate/numeric/seededRandom.js";
import type { NestedDesign } from "./NestedDesign.js";

/** One foot at one visit of a simulated study. */
export interface SimulatedFoot {
  readonly yard: string;
  /** Unique within the yard. */
  readonly horse: string;
  readonly foot: "LF" | "RF" | "LH" | "RH";
  readonly visit: number;
  /** How wet it was, in standard deviations. */
  readonly wet: number;
  readonly hind: boolean;
  readonly thrush: boolean;
}

const feet = ["LF", "RF", "LH", "RH"] as const;

/**
 * Feet of a study whose truth is known: log odds = intercept + wet x wetness + hind (in hind feet) + yard effect + horse effect, the
 * effects normal with the design's SDs; the feet independent given these. The same design and seed give the same rows on any machine.
 *
 * Errors: `out_of_range` for yards, visits or horses that are not at least one a yard.
 */
export function simulateNestedStudy(design: NestedDesign, seed: string | number): readonly SimulatedFoot[] {
  const { yards, horsesPerYard, visits, wetBy, truth } = design;
  if (!(Number.isInteger(yards) && yards >= 1 && Number.isInteger(visits) && visits >= 1 && horsesPerYard >= 1)) {
    throw new EstimateError(
      "out_of_range",
      `A study of ${yards} yards, ${horsesPerYard} horses a yard and ${visits} visits cannot be simulated.`,
      "Give whole numbers of yards and visits, and at least one horse a yard.",
    );
  }
  const random = seededRandom(seed);
  const rows: SimulatedFoot[] = [];
  for (let y = 0; y < yards; y++) {
    const yardEffect = random.normal(0, truth.yardSd);
    const once = random.normal();
    const wets = Array.from({ length: visits }, () => (wetBy === "yard" ? once : random.normal()));
    const horses = Math.round((y + 1) * horsesPerYard) - Math.round(y * horsesPerYard);
    for (let h = 0; h < horses; h++) {
      const effect = truth.intercept + yardEffect + random.normal(0, truth.horseSd);
      wets.forEach((wet, visit) => {
        for (const foot of feet) {
          const hind = foot.endsWith("H");
          const logOdds = effect + truth.wet * wet + (hind ? truth.hind : 0);
          const thrush = random.bernoulli(1 / (1 + Math.exp(-logOdds)));
          rows.push({ yard: `yard ${y + 1}`, horse: `horse ${h + 1}`, foot, visit: visit + 1, wet, hind, thrush });
        }
      });
    }
  }
  return rows;
}
