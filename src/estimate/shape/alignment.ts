/** The turn that lays one centred set of landmarks on another. */
export interface Alignment {
  readonly cosine: number;
  readonly sine: number;
  /** Length of the inner product after the turn: 1 for equal shapes of size 1. */
  readonly likeness: number;
}

/**
 * The turn that brings `moved` nearest to `fixed`, both as x and y in turn; of a mirror image of `moved` (y turned to -y) when
 * `reflect` is true. In the plane this is the angle of a complex inner product. No turn when the product is 0.
 */
export function alignment(fixed: Float64Array, moved: Float64Array, reflect = false): Alignment {
  let [real, imaginary] = [0, 0];
  const sign = reflect ? -1 : 1;
  for (let k = 0; k < fixed.length; k += 2) {
    const x = moved[k]!;
    const y = sign * moved[k + 1]!;
    real += x * fixed[k]! + y * fixed[k + 1]!;
    imaginary += x * fixed[k + 1]! - y * fixed[k]!;
  }
  const likeness = Math.hypot(real, imaginary);
  return likeness === 0 ? { cosine: 1, sine: 0, likeness } : { cosine: real / likeness, sine: imaginary / likeness, likeness };
}
