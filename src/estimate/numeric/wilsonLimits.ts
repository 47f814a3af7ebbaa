/**
 * Wilson score limits of a proportion `p` among `n` (which may be an effective, fractional number) for the normal quantile `z`.
 * Always within 0 and 1 and always around `p`.
 *
 * Source: Wilson EB (1927) J Am Stat Assoc 22:209-212.
 */
export function wilsonLimits(p: number, n: number, z: number): { readonly lower: number; readonly upper: number } {
  const centre = 2 * n * p + z * z;
  const reach = z * Math.sqrt(z * z + 4 * n * p * (1 - p));
  const scale = 2 * (n + z * z);
  return {
    lower: p === 0 ? 0 : Math.min(p, Math.max(0, (centre - reach) / scale)),
    upper: p === 1 ? 1 : Math.max(p, Math.min(1, (centre + reach) / scale)),
  };
}
