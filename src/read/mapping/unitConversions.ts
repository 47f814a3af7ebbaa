/** From a unit of a file to the unit of a column table: value = (number + offset) x numerator / denominator. */
export interface Conversion {
  readonly numerator: number;
  readonly denominator: number;
  readonly offset: number;
  /** What is done, in words. */
  readonly words: string;
  /** How the unit may stand behind the number in a cell. */
  readonly suffix: RegExp;
  /** The number is hands, its digit after the point inches (0 to 3), and the conversion starts from inches. */
  readonly hands?: true;
}

const times = (numerator: number, denominator: number, words: string, suffix: RegExp): Conversion => ({
  ...{ numerator, denominator, offset: 0, words, suffix },
});
const same = (suffix: RegExp) => times(1, 1, "as they are", suffix);
const inch = /(in|inch|inches|"|\u2033)\.?$/i;

/**
 * The units in which a file may keep a column, by the unit of the column table. Inch, pound and mile are exact by definition (international yard and pound
 * agreement of 1959: 25.4 mm, 0.45359237 kg, 1.609344 km); a hand is 4 inches.
 */
export const unitConversions: Readonly<Record<string, Readonly<Record<string, Conversion>>>> = {
  mm: {
    mm: same(/mm$/i),
    cm: times(10, 1, "times 10", /cm$/i),
    m: times(1000, 1, "times 1000", /m$/i),
    in: times(254, 10, "times 25.4", inch),
  },
  cm: {
    cm: same(/cm$/i),
    mm: times(1, 10, "divided by 10", /mm$/i),
    m: times(100, 1, "times 100", /m$/i),
    in: times(254, 100, "times 2.54", inch),
    hands: {
      ...times(254, 100, "hands of 4 inches and the inches after the point, times 2.54", /(hh?|hands)\.?$/i),
      hands: true,
    },
  },
  kg: { kg: same(/kg$/i), lb: times(45_359_237, 100_000_000, "times 0.45359237", /lbs?\.?$/i) },
  km: {
    km: same(/km$/i),
    m: times(1, 1000, "divided by 1000", /m$/i),
    mi: times(1_609_344, 1_000_000, "times 1.609344", /mi(les?)?$/i),
  },
  deg: { deg: same(/(\u00b0|deg)$/i), rad: times(180, Math.PI, "times 180 / pi", /rad$/i) },
  degC: {
    degC: same(/\u00b0? ?C$/i),
    degF: { ...times(5, 9, "less 32, times 5/9", /\u00b0? ?F$/i), offset: -32 },
  },
  days: { days: same(/d(ays?)?$/i), weeks: times(7, 1, "times 7", /w(eeks?|ks?)?$/i) },
};
