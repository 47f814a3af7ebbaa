import { createRequire } from "node:module";

/** What is used of cephes; the package ships types that its own export map hides. */
interface Cephes {
  /** Standard normal distribution function. */
  readonly ndtr: (x: number) => number;
  /** Standard normal quantile. */
  readonly ndtri: (p: number) => number;
  /** Regularised incomplete beta function. */
  readonly incbet: (a: number, b: number, x: number) => number;
  /** Its inverse in x. */
  readonly incbi: (a: number, b: number, p: number) => number;
  /** Regularised lower incomplete gamma function. */
  readonly igam: (a: number, x: number) => number;
  /** Regularised upper incomplete gamma function. */
  readonly igamc: (a: number, x: number) => number;
  /** Inverse in x of the upper one. */
  readonly igami: (a: number, p: number) => number;
  /** Logarithm of the gamma function. */
  readonly lgam: (x: number) => number;
}

// By `require`, because that build is ready at once, while the ES module build compiles in the background and fails when called too early;
// and once, because asking Node for it anew takes longer than what is then computed.
const library = createRequire(import.meta.url)("cephes") as Cephes;

/** Special functions of the cephes library. */
export function cephes(): Cephes {
  return library;
}
