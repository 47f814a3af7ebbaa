import fc from "fast-check";
import { expect, test } from "vitest";
import { converted } from "../../../src/read/mapping/converted.js";
import { unitConversions } from "../../../src/read/mapping/unitConversions.js";

function into(to: string, from: string, text: string): number | null {
  const conversion = unitConversions[to]?.[from];
  if (conversion === undefined) throw new Error(`${from} to ${to}`);
  return converted(text, conversion);
}

// Exact by definition: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, 1 mi = 1.609344 km (NIST Special Publication 811, appendix B.8; figures from memory).
test("the definitions of inch, pound and mile", () => {
  expect(into("mm", "in", "1")).toBe(25.4);
  expect(into("kg", "lb", "1")).toBe(0.45359237);
  expect(into("km", "mi", "1")).toBe(1.609344);
});

test("the number nearest to the true value, where multiplying would miss it", () => {
  expect(4.1 * 25.4).not.toBe(104.14);
  expect(into("mm", "in", "4.1")).toBe(104.14);
  expect(into("mm", "in", "4.7")).toBe(119.38);
  expect(into("mm", "cm", "12.4")).toBe(124);
  expect(into("cm", "mm", "1473.2")).toBe(147.32);
  expect(into("kg", "lb", "1102.5")).toBe(500.085587925);
});

// A hand is 4 inches, and the digit after the point is inches: 14.2 hands are 58 inches (common practice, no source).
test("hands", () => {
  expect(into("cm", "hands", "14.2")).toBe(147.32);
  expect(into("cm", "hands", "15.2hh")).toBe(157.48);
  expect(into("cm", "hands", "16")).toBe(162.56);
  for (const none of ["14.4", "14.25", "14.10", "142", "-14", "14,2"]) expect(into("cm", "hands", none)).toBeNull();
});

// 32 degrees F is 0 degrees C, 212 is 100, and -40 is -40 on both scales.
test("degrees Fahrenheit, radians, weeks", () => {
  expect(into("degC", "degF", "32")).toBe(0);
  expect(into("degC", "degF", "212")).toBe(100);
  expect(into("degC", "degF", "-40")).toBe(-40);
  expect(into("degC", "degF", "99.5")).toBe(37.5);
  expect(into("deg", "rad", "0.9")).toBeCloseTo(51.5662015618, 9); // 10 digits of 0.9 x 180 / pi
  expect(into("days", "weeks", "6")).toBe(42);
});

test("the unit itself may stand behind the number, another may not", () => {
  expect(into("mm", "in", '4.7"')).toBe(119.38);
  expect(into("mm", "in", "4.7 in.")).toBe(119.38);
  expect(into("mm", "mm", "119mm")).toBe(119);
  expect(into("mm", "in", "4.7 cm")).toBeNull();
  expect(into("mm", "m", "119mm")).toBeNull();
});

// 5 1/8 in is 5.125 in, 130.175 mm.
test("inches and a fraction, as they stand on a rule", () => {
  expect(into("mm", "in", "5 1/8")).toBe(130.175);
  expect(into("mm", "in", '5-1/8"')).toBe(130.175);
  expect(into("mm", "in", "5\u215b in")).toBe(130.175);
  expect(into("mm", "in", "5 \u00bd")).toBe(139.7);
  expect(into("mm", "in", "3/4")).toBe(19.05);
  for (const none of ["5 1/0", "1/", "/8", "5 1/8 1/8", "1/2/2025"]) expect(into("mm", "in", none)).toBeNull();
});

test("what is no decimal number is refused", () => {
  for (const none of ["", ".", "-", "x", "1.2.3", "1e3", "Infinity", "0x10", "1 2", "--1"])
    expect(into("mm", "cm", none)).toBeNull();
});

test("any number of up to three digits and three decimals is converted to the nearest number", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 999_999 }), (thousandths) => {
      const text = `${String(Math.floor(thousandths / 1000))}.${String(thousandths % 1000).padStart(3, "0")}`;
      // Whole numbers throughout: thousandths of an inch are 254 x n ten-thousandths of a millimetre.
      expect(into("mm", "in", text)).toBe(Number(`${String(thousandths * 254)}e-4`));
      expect(into("kg", "lb", text)).toBe(Number(`${String(BigInt(thousandths) * 45_359_237n)}e-11`));
    }),
  );
});
