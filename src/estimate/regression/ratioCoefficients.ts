import type { Coefficient } from "../Coefficient.js";
import type { RatioInterval } from "../RatioInterval.js";

/** Coefficients with the ratios they stand for: the exponential of estimate and limits under the given name. */
export function ratioCoefficients<Name extends string>(
  coefficients: readonly Coefficient[],
  name: Name,
): readonly (Coefficient & Readonly<Record<Name, RatioInterval>>)[] {
  return coefficients.map((coefficient) => {
    const { estimate, lower, upper } = coefficient;
    const ratio: RatioInterval = { estimate: Math.exp(estimate), lower: Math.exp(lower), upper: Math.exp(upper) };
    return { ...coefficient, ...({ [name]: ratio } as Readonly<Record<Name, RatioInterval>>) };
  });
}
