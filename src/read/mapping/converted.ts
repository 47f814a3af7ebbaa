import type { Conversion } from "./unitConversions.js";

const NUMBER = /^([+-]?)(\d*)(?:\.(\d*))?$/;
/** 5 1/8, 5-1/8 or 1/8, as rules are read in inches. */
const FRACTION = /^(?:(\d{1,6})[ -])?(\d{1,3})\/([1-9]\d?)$/;
const SINGLE_SIGNS: Readonly<Record<string, string>> = {
  "\u00bd": "1/2",
  "\u00bc": "1/4",
  "\u00be": "3/4",
  "\u215b": "1/8",
  "\u215c": "3/8",
  "\u215d": "5/8",
  "\u215e": "7/8",
};

/**
 * A decimal number, or whole number and fraction, in another unit; null when the text is none. The unit itself may stand behind the number.
 *
 * The digits are taken as a whole number, so that nothing is rounded before the one division at the end: the result is the number nearest to the true value as long as
 * whole numbers below 2^53 hold it, which any measure of a foot does. 4.1 inches are 104.14 mm, not 104.13999999999999.
 */
export function converted(text: string, conversion: Conversion): number | null {
  const plain = text.replace(conversion.suffix, "").trim();
  const fraction = conversion.hands === true ? null : fractionOf(plain);
  if (fraction !== null) {
    const [above, below] = fraction;
    return ((above + conversion.offset * below) * conversion.numerator) / (conversion.denominator * below);
  }
  const number = conversion.hands === true ? inchesOf(plain) : plain;
  const parts = number === null ? null : NUMBER.exec(number);
  const [, sign = "", whole = "", decimals = ""] = parts ?? [];
  if (whole + decimals === "") return null;
  const scale = 10 ** decimals.length;
  const digits = Number(`${sign}${whole}${decimals}`);
  return ((digits + conversion.offset * scale) * conversion.numerator) / (conversion.denominator * scale);
}

function fractionOf(text: string): readonly [number, number] | null {
  const plain = text.replace(/ ?[\u00bc-\u00be\u215b-\u215e]$/, (sign) => ` ${SINGLE_SIGNS[sign.trim()] ?? ""}`).trim();
  const [, whole = "0", above = "", below = ""] = FRACTION.exec(plain) ?? [];
  if (above === "") return null;
  return [Number(whole) * Number(below) + Number(above), Number(below)];
}

/** 14.2 hands are 14 hands and 2 inches. */
function inchesOf(hands: string): string | null {
  const parts = /^(\d{1,2})(?:\.([0-3]))?$/.exec(hands);
  return parts === null ? null : String(Number(parts[1]) * 4 + Number(parts[2] ?? 0));
}
