/** A p value as it is printed: three digits, `below 0.001`. */
export function pWords(p: number | null): string {
  if (p === null) return "not tested";
  return p < 0.001 ? "below 0.001" : p.toFixed(3);
}
