import type { EffectInterval } from "../EffectInterval.js";
import { normalQuantile } from "./normalQuantile.js";

/**
 * Wald interval of an effect: on the logarithm for a ratio, cut at -1 and 1 for a difference of proportions. Limits are null
 * when the standard error is null, zero or no number, and when a ratio is 0, infinite or null.
 */
export function waldEffect(
  estimate: number | null,
  standardError: number | null,
  scale: "ratio" | "difference",
  level: number,
  { method, why }: { readonly method: string; readonly why: string },
): EffectInterval {
  const se = standardError !== null && Number.isFinite(standardError) && standardError > 0 ? standardError : null;
  const usable = estimate !== null && se !== null && (scale === "difference" || (estimate > 0 && estimate < Infinity));
  if (!usable) return { estimate, se: null, lower: null, upper: null, level, method, note: why };
  const reach = normalQuantile((1 + level) / 2) * se;
  const [lower, upper] =
    scale === "ratio"
      ? [estimate * Math.exp(-reach), estimate * Math.exp(reach)]
      : [Math.max(-1, estimate - reach), Math.min(1, estimate + reach)];
  return { estimate, se, lower, upper, level, method, note: null };
}
