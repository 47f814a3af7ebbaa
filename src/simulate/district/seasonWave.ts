import { dayNumber } from "../../study/dayNumber.js";

/**
 * Yearly wave: 1 on 15 January, -1 in mid July. Rounded, so that a last digit of the cosine that differs between machines cannot
 * change a simulated text.
 */
export function seasonWave(day: number): number {
  const days = day - dayNumber("2025-01-15")!;
  return Math.round(Math.cos((2 * Math.PI * days) / 365.25) * 1e6) / 1e6;
}
