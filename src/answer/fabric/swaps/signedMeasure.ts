/** A difference in words, to a tenth: `+3.5 mm`, `-2 degrees`. */
export function signedMeasure(value: number, unit: "mm" | "deg"): string {
  const rounded = Math.round(value * 10) / 10;
  return `${rounded > 0 ? "+" : ""}${rounded === 0 ? 0 : rounded} ${unit === "mm" ? "mm" : "degrees"}`;
}
