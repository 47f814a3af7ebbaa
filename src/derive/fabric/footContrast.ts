import { fabricMeasures } from "./fabricMeasures.js";
import type { FootPair } from "./FootPair.js";
import type { FootSet } from "./FootSet.js";

/**
 * The first foot of a pair less the second in one set, one value for each of `fabricMeasures`. What both feet share, such as growth since
 * the last trim, drops out; when the two labels were exchanged, each value has the wrong sign.
 *
 * Missing: null where either foot was not measured, and null in all when no measure was taken of both.
 */
export function footContrast({ rows }: FootSet, [first, second]: FootPair): (number | null)[] | null {
  const [a, b] = [rows[first], rows[second]];
  if (a === undefined || b === undefined) return null;
  const values = fabricMeasures.map(({ field }) => {
    const [of, less] = [a[field], b[field]];
    return of === null || less === null ? null : of - less;
  });
  return values.every((value) => value === null) ? null : values;
}
