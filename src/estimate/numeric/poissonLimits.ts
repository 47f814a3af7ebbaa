import { chiSquareQuantile } from "./chiSquareQuantile.js";

/**
 * Exact limits of a Poisson mean from the number of events seen.
 *
 * Source: Garwood F (1936) Biometrika 28:437-442; chi-square form as in Ulm K (1990) Am J Epidemiol 131:373-375.
 */
export function poissonLimits(events: number, level: number): { readonly lower: number; readonly upper: number } {
  return {
    lower: events === 0 ? 0 : chiSquareQuantile((1 - level) / 2, 2 * events) / 2,
    upper: chiSquareQuantile((1 + level) / 2, 2 * events + 2) / 2,
  };
}
