/** Number rounded to this many decimals, halves up; as it is written into a file. */
export function rounded(value: number, decimals = 0): number {
  const scale = 10 ** decimals;
  // Adding 0 turns a negative zero into 0.
  return Math.round(value * scale) / scale + 0;
}
