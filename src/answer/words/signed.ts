import { rounded } from "./rounded.js";

/** A difference with its sign: `+3.2`, `−0.5`, and `0.0` without one. */
export function signed(value: number, digits: number): string {
  const text = rounded(value, digits);
  return value > 0 && Number(text) !== 0 ? `+${text}` : text;
}
