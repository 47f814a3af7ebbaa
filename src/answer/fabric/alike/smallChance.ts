/** A chance in words: `1 in 40`, `less than 1 in a million`. */
export function smallChance(p: number): string {
  if (p < 1e-6) return "less than 1 in a million";
  const times = 1 / p;
  const digits = 10 ** Math.max(0, Math.floor(Math.log10(times)) - 1);
  return `1 in ${String(Math.round(times / digits) * digits).replace(/\B(?=(\d{3})+$)/g, ",")}`;
}
