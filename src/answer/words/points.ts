import { signed } from "./signed.js";

/**
 * A difference of two proportions in percentage points: `+7 points`, `−12 points`, `+1 point`; below one point with a digit after
 * the point, so that a small difference is not shown as none.
 */
export function points(difference: number): string {
  const number = pointsAlone(difference);
  return `${number} ${/^[+−]?1$/.test(number) ? "point" : "points"}`;
}

function pointsAlone(difference: number): string {
  const size = Math.abs(difference) * 100;
  return signed(difference * 100, size < 0.95 ? 1 : 0);
}
