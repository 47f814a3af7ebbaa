/**
 * A proportion as a whole percentage that never rounds to a certainty: `37%`, `under 1%` for a little above 0, `over 99%` for a
 * little below 1. The proportion must lie in 0-1.
 */
export function percentage(proportion: number): string {
  if (!(proportion >= 0 && proportion <= 1))
    throw new RangeError(`A proportion lies between 0 and 1; this one is ${proportion}.`);
  const whole = Math.round(proportion * 100);
  if (whole === 0 && proportion > 0) return "under 1%";
  if (whole === 100 && proportion < 1) return "over 99%";
  return `${whole}%`;
}
