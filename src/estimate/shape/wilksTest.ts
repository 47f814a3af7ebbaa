import { fUpper } from "../numeric/fUpper.js";

/** Test that class means are equal in all terms. */
export interface WilksTest {
  /** Determinant of the spread within classes over that of the whole: 1 for equal means, towards 0 for distant ones. */
  readonly lambda: number;
  /** Pillai's trace. */
  readonly pillai: number;
  /** Rao's approximation, exact for two or three classes, or one or two terms. */
  readonly f: number;
  readonly df1: number;
  readonly df2: number;
  readonly p: number;
}

/** Wilks' lambda and Pillai's trace from the singular values of the class means weighted by their counts. */
export function wilksTest(singularValues: readonly number[], n: number, terms: number, classes: number): WilksTest {
  const ratios = singularValues.map((value) => (value ** 2 * (classes - 1)) / (n - classes));
  const lambda = ratios.reduce((product, ratio) => product / (1 + ratio), 1);
  const q = classes - 1;
  const s = terms ** 2 + q ** 2 - 5 > 0 ? Math.sqrt((terms ** 2 * q ** 2 - 4) / (terms ** 2 + q ** 2 - 5)) : 1;
  const df1 = terms * q;
  const df2 = s * (n - 1 - (terms + classes) / 2) - (df1 - 2) / 2;
  const root = lambda ** (1 / s);
  const f = ((1 - root) / root) * (df2 / df1);
  return { lambda, pillai: ratios.reduce((sum, ratio) => sum + ratio / (1 + ratio), 0), f, df1, df2, p: fUpper(f, df1, df2) };
}
