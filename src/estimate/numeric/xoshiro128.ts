/**
 * Generator xoshiro128**: each call gives the next whole number from 0 to 2^32 - 1. Same state, same numbers, on any machine.
 * The period is 2^128 - 1; the state must not be all zeros, which would stay zero for ever.
 *
 * Source: Blackman D, Vigna S 2021, Scrambled linear pseudorandom number generators, ACM Trans Math Softw 47:36.
 */
export function xoshiro128(state: readonly [number, number, number, number]): () => number {
  let [a, b, c, d] = state;
  return () => {
    const result = Math.imul(rotated(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotated(d, 11);
    return result;
  };
}

function rotated(bits: number, by: number): number {
  return (bits << by) | (bits >>> (32 - by));
}
