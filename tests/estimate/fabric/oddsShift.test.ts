import { expect, test } from "vitest";
import { type HorseVisit, oddsShift } from "../../../src/estimate/fabric/oddsShift.js";
import { mantelHaenszel } from "../../../src/estimate/mantelHaenszel.js";
import { tQuantile } from "../../../src/estimate/numeric/tQuantile.js";

/** Horses that were each seen once by A and once by B, so many of each kind: A case and B case, A case only, B case only, neither. */
const stratum = (name: string, kinds: readonly [number, number, number, number]): HorseVisit[] =>
  kinds
    .flatMap((count, kind) =>
      Array.from({ length: count }, (_, horse) => {
        const seen = { horseId: `${name} ${String(kind)} ${String(horse)}`, stratum: name };
        return [
          { ...seen, observerId: "A", thrush: kind < 2 },
          { ...seen, observerId: "B", thrush: kind === 0 || kind === 2 },
        ];
      }),
    )
    .flat();

const strata = [stratum("winter", [8, 10, 2, 10]), stratum("summer", [2, 8, 1, 14])];

test("the odds ratio is that of Mantel and Haenszel", () => {
  const shift = oddsShift(strata, "A", 0.95);
  // Winter: A 18 of 30, B 10 of 30. Summer: A 10 of 25, B 3 of 25.
  expect(shift?.table).toEqual({ a: 28, b: 27, c: 13, d: 42 });
  const known = mantelHaenszel([
    { a: 18, b: 12, c: 10, d: 20 },
    { a: 10, b: 15, c: 3, d: 22 },
  ]);
  expect(shift?.ratio).toBeCloseTo(known.estimate ?? NaN, 12);
  expect(shift?.horses).toBe(55);
});

test("the interval leaves out one horse at a time: kinds of horses counted by hand", () => {
  const logOdds = (winter: readonly [number, number, number, number], summer: readonly [number, number, number, number]) => {
    const sums = [winter, summer].map(([a, b, c, d]) => {
      const n = a + b + c + d;
      return [(a * d) / n, (b * c) / n] as const;
    });
    return Math.log(sums.reduce((sum, [r]) => sum + r, 0) / sums.reduce((sum, [, s]) => sum + s, 0));
  };
  const [winter, summer] = [
    [18, 12, 10, 20],
    [10, 15, 3, 22],
  ] as const;
  // What a horse of each kind takes away: cases and others of A, cases and others of B.
  const taken = [
    [1, 0, 1, 0],
    [1, 0, 0, 1],
    [0, 1, 1, 0],
    [0, 1, 0, 1],
  ] as const;
  const less = (from: readonly [number, number, number, number], kind: number) => {
    const [a, b, c, d] = taken[kind] ?? taken[0];
    return [from[0] - a, from[1] - b, from[2] - c, from[3] - d] as const;
  };
  const logs = [
    ...[8, 10, 2, 10].flatMap((count, kind) => Array<number>(count).fill(logOdds(less(winter, kind), summer))),
    ...[2, 8, 1, 14].flatMap((count, kind) => Array<number>(count).fill(logOdds(winter, less(summer, kind)))),
  ];
  const mean = logs.reduce((sum, log) => sum + log, 0) / 55;
  const se = Math.sqrt((54 / 55) * logs.reduce((sum, log) => sum + (log - mean) ** 2, 0));
  const shift = oddsShift(strata, "A", 0.95);
  expect(Math.log((shift?.upper ?? NaN) / (shift?.ratio ?? NaN))).toBeCloseTo(tQuantile(0.975, 54) * se, 10);
  expect((shift?.upper ?? NaN) / (shift?.ratio ?? NaN)).toBeCloseTo((shift?.ratio ?? NaN) / (shift?.lower ?? NaN), 10);
});

test("the same horses seen ten times over do not make the interval ten times surer", () => {
  const often = strata.map((visits) => Array.from({ length: 10 }, () => visits).flat());
  const [once, ten] = [oddsShift(strata, "A", 0.95), oddsShift(often, "A", 0.95)];
  expect(ten?.ratio).toBeCloseTo(once?.ratio ?? NaN, 12);
  // The ratio without one horse is the same ten times over.
  expect(ten?.upper).toBeCloseTo(once?.upper ?? NaN, 10);
});

test("few horses, or an observer who never meets another, say nothing", () => {
  expect(oddsShift([stratum("winter", [2, 2, 2, 3])], "A", 0.95)).toBeNull();
  const alone = strata.map((visits) => visits.filter(({ observerId }) => observerId === "A"));
  expect(oddsShift(alone, "A", 0.95)).toBeNull();
});
