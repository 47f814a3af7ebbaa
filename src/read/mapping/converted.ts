import type { Conversion } from "./unitConversions.js";

const NUMBER = /^([+-]?)(\d*)(?:\.(\d*))?$/;

/**
 * A decimal number in another unit; null when the text is none. The unit itself may stand behind the number.
 *
 * The digits are taken as a whole number, so that nothing is rounded before the one division at the end: the result is the number nearest to the true value as long as
 * whole numbers below 2^53 hold it, which any measure of a foot does. 4.1 inches are 104.14 mm, not 104.13999999999999.
 */
export function converted(text: string, conversion: Conversion): number | null {
  const plain = text.replace(conversion.suffix, "").trim();
  const number = conversion.hands === true ? inchesOf(plain) : plain;
  const parts = number === null ? null : NUMBER.exec(number);
  const [, sign = "", whole = "", fraction = ""] = parts ?? [];
  if (whole + fraction === "") return null;
  const scale = 10 ** fraction.length;
  const digits = Number(`${sign}${whole}${fraction}`);
  return ((digits + conversion.offset * scale) * conversion.numerator) / (conversion.denominator * scale);
}

/** 14.2 hands are 14 hands and 2 inches. */
function inchesOf(hands: string): string | null {
  const parts = /^(\d{1,2})(?:\.([0-3]))?$/.exec(hands);
  return parts === null ? null : String(Number(parts[1]) * 4 + Number(parts[2] ?? 0));
}
