/** A p value: `p 0.032`, `p under 0.001`, `p over 0.999`. */
export function pValue(p: number): string {
  if (p < 0.001) return "p under 0.001";
  return p > 0.999 ? "p over 0.999" : `p ${p.toFixed(3)}`;
}
