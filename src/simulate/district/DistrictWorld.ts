import type { PlantedEffects } from "./plantedEffects.js";
import type { RandomSource } from "../../estimate/numeric/RandomSource.js";
import type { Wetness } from "./wetnessBefore.js";

/** What every horse of the simulated district shares. */
export interface DistrictWorld {
  readonly effects: PlantedEffects;
  readonly wetness: (gaugeId: string, date: string) => Wetness;
  /** Log odds of thrush of each yard against the average yard. */
  readonly yardEffects: ReadonlyMap<string, number>;
  /** Source for what a whole yard shares on a day. */
  readonly yardDays: RandomSource;
}
