import { benjaminiHochberg } from "./benjaminiHochberg.js";
import { effectOfExposure } from "./effectOfExposure.js";
import type { ExposureEffect } from "./ExposureEffect.js";
import type { ExposureModel } from "./ExposureModel.js";
import { holm } from "./holm.js";

/** One exposure of the grid. */
export interface WindowEffect extends ExposureEffect {
  /** Column of the exposure. */
  readonly exposure: string;
  /** The one that was declared; all others are exploratory. */
  readonly primary: boolean;
  /** P value held against all that were tried, so that any false finding is rare (Holm). */
  readonly holmP: number | null;
  /** The same so that few of the findings are false (Benjamini-Hochberg). */
  readonly falseDiscoveryP: number | null;
}

/**
 * The same model with one exposure after another: windows of days, decays of an index, kinds of wetness. All that were tried are shown, and p values
 * are adjusted for their number; the declared one keeps its own p value, as it was declared before.
 *
 * Method: `effectOfExposure` for each; `holm` and `benjaminiHochberg` over all that have an estimate.
 *
 * Missing, errors: as `effectOfExposure`.
 */
export function exposureWindows(
  model: Omit<ExposureModel, "exposure" | "per">,
  exposures: readonly { readonly exposure: string; readonly per?: number }[],
  primary: string,
): WindowEffect[] {
  const effects = exposures.map(({ exposure, per }) =>
    effectOfExposure({ ...model, exposure, ...(per === undefined ? {} : { per }) }, { name: exposure }),
  );
  const pValues = effects.map(({ p }) => p);
  const [family, discovery] = [holm(pValues), benjaminiHochberg(pValues)];
  return effects.map((effect, place) => ({
    ...effect,
    exposure: exposures[place]!.exposure,
    primary: exposures[place]!.exposure === primary,
    holmP: family[place]!,
    falseDiscoveryP: discovery[place]!,
  }));
}
