/** A number with so many digits after the point, a proper minus sign, and never a negative zero: `−1.5`, `0.0`; infinite: `no limit`. */
export function rounded(value: number, digits: number): string {
  if (!Number.isFinite(value)) return "no limit";
  const text = Math.abs(value).toFixed(digits);
  return value < 0 && Number(text) !== 0 ? `−${text}` : text;
}
