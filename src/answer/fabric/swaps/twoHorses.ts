import { standingFeet } from "../../../derive/fabric/standingFeet.js";
import { categoryFlip } from "../../../estimate/fabric/categoryFlip.js";
import { flipPart } from "../../../estimate/fabric/flipPart.js";
import { fewestDays } from "./fewestDays.js";
import type { HorseWeights } from "./HorseWeights.js";

/** Evidence that the sets `a` and `b` of two horses were exchanged. */
export function twoHorses(weights: HorseWeights, a: number, b: number) {
  const { columns, values } = weights.readings;
  const { expected, variance } = weights.expectations;
  const parts: number[] = [];
  const misfits: [number, number] = [0, 0];
  let information = 0;
  for (let column = 0; column < columns; column++) {
    const [here, there] = [a * columns + column, b * columns + column];
    const [x, y, m, n] = [values[here] ?? NaN, values[there] ?? NaN, expected[here] ?? NaN, expected[there] ?? NaN];
    const [v, w] = [variance[here] ?? NaN, variance[there] ?? NaN];
    const part = flipPart(x - y, m - n, v + w);
    parts.push(Number.isNaN(part) ? 0 : part);
    if (!Number.isNaN(part)) information += (4 * (m - n) ** 2) / (v + w);
    // How much worse each set fits its own horse than the other one.
    if (Number.isNaN(x + y + m + n)) continue;
    misfits[0] += ((x - m) ** 2 / v - (x - n) ** 2 / w) / 2;
    misfits[1] += ((y - n) ** 2 / w - (y - m) ** 2 / v) / 2;
  }
  const gap = parts.reduce((sum, part) => sum + part, 0);
  const horn = () => standingFeet.map((_, foot) => hornGap(weights, foot, a, b));
  return { gap, information, parts, misfits, horn };
}

function hornGap(weights: HorseWeights, foot: number, a: number, b: number): number {
  const of = (set: number) => weights.hornColour[set * standingFeet.length + foot] ?? -1;
  const [first, second] = [of(a), of(b)];
  if (first < 0 || second < 0) return 0;
  return categoryFlip([first, second], [otherDays(weights, foot, a), otherDays(weights, foot, b)], fewestDays);
}

/** On how many other days of its horse a foot showed each horn colour. */
function otherDays({ table: { starts, days }, hornColour }: HorseWeights, foot: number, set: number): number[] {
  const horse = starts.findIndex((start) => start > set) - 1;
  const counts = [0, 0, 0];
  for (let other = starts[horse] ?? 0; other < (starts[horse + 1] ?? 0); other++) {
    const code = hornColour[other * standingFeet.length + foot] ?? -1;
    const again = other > (starts[horse] ?? 0) && days[other] === days[other - 1];
    if (code >= 0 && !again && days[other] !== days[set]) counts[code] = (counts[code] ?? 0) + 1;
  }
  return counts;
}
