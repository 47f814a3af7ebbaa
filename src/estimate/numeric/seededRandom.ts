import { EstimateError } from "../EstimateError.js";
import { normalQuantile } from "./normalQuantile.js";
import type { RandomSource } from "./RandomSource.js";
import { requireNumber } from "./requireNumber.js";
import { requireWithin } from "./requireWithin.js";
import { xoshiro128 } from "./xoshiro128.js";

/**
 * Random numbers from a seed; equal seeds give equal numbers.
 *
 * Method: xoshiro128** (see `xoshiro128`), its state hashed from the text of the seed. Uniform: 52 bits, centred in their step.
 * Normal: the quantile of a uniform, so one uniform a draw. Poisson: waiting times by the product of uniforms (Knuth), a mean
 * above 16 split in halves. Integer: high bits scaled, the surplus rejected, so that no value is favoured.
 *
 * Errors: `not_a_number`; `out_of_range` for a negative mean or spread or a probability outside 0 to 1; `empty` for a pick from nothing.
 *
 * Source: generator as in `xoshiro128`; hash of the seed: FNV-1a, and the finaliser of MurmurHash3 (both public domain).
 */
export function seededRandom(seed: string | number): RandomSource {
  const next = xoshiro128(stateOf(String(seed)));
  const uniform = () => ((next() >>> 6) * 67_108_864 + (next() >>> 6) + 0.5) / 4_503_599_627_370_496;
  const integer = (low: number, high: number): number => {
    const values = high - low + 1;
    if (!(Number.isSafeInteger(low) && values >= 1 && values <= 4_294_967_296 && Number.isSafeInteger(high))) {
      throw new EstimateError(
        "out_of_range",
        `${low} to ${high} is no range of whole numbers.`,
        "Give two whole numbers, the lower one first.",
      );
    }
    const limit = 4_294_967_296 - (4_294_967_296 % values);
    for (;;) {
      const bits = next();
      if (bits < limit) return low + Math.floor(bits / (limit / values));
    }
  };
  return {
    uniform,
    integer,
    normal: (mean = 0, sd = 1) => {
      requireWithin("standard deviation", sd, 0, Infinity);
      return requireNumber("mean", mean) + sd * normalQuantile(uniform());
    },
    bernoulli: (probability) => uniform() < requireWithin("probability", probability, 0, 1),
    poisson: (mean) => poisson(requireWithin("mean", requireNumber("mean", mean), 0, Infinity), uniform),
    pick: (items) => {
      if (items.length === 0)
        throw new EstimateError("empty", "There is nothing to pick from.", "Give a list with at least one item.");
      return items[integer(0, items.length - 1)]!;
    },
    stream: (name) => seededRandom(`${seed}/${name}`),
  };
}

function poisson(mean: number, uniform: () => number): number {
  if (mean > 16) return poisson(mean / 2, uniform) + poisson(mean / 2, uniform);
  const floor = Math.exp(-mean);
  let count = 0;
  for (let product = uniform(); product > floor; product *= uniform()) count++;
  return count;
}

function stateOf(seed: string): [number, number, number, number] {
  // Two hashes, because thousands of named streams of one study would collide in 32 bits.
  let [first, second] = [0x811c9dc5, 0x9e3779b9];
  for (let place = 0; place < seed.length; place++) {
    const letter = seed.charCodeAt(place);
    first = Math.imul(first ^ letter, 0x01000193);
    second = Math.imul(second ^ letter ^ (second >>> 15), 0x5bd1e995);
  }
  // Mixing is one-to-one, so the first and third word differ and the state is never all zeros.
  return [mixed(first), mixed(second), mixed(~first), mixed(~second)];
}

function mixed(bits: number): number {
  let x = bits;
  x = Math.imul(x ^ (x >>> 16), 0x85ebca6b);
  x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35);
  return x ^ (x >>> 16);
}
