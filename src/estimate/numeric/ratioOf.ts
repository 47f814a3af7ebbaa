/** A quotient of two numbers that are not negative: `Infinity` over zero, null for 0/0. */
export function ratioOf(above: number, below: number): number | null {
  if (below === 0) return above === 0 ? null : Infinity;
  return above / below;
}
