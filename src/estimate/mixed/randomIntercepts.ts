import { normalQuantile } from "../numeric/normalQuantile.js";
import type { RandomIntercept } from "./RandomIntercept.js";

/** What is known of one random intercept. */
interface Spread {
  readonly name: string;
  readonly count: number;
  readonly sd: number;
  /** Null when the SD is 0. */
  readonly seLogSd: number | null;
}

const LATENT_VARIANCE = Math.PI ** 2 / 3;
/** With fewer groups than this their SD is little more than a guess (common practice, no source). */
const FEW = 10;

/**
 * Random intercepts, outermost first, with limits and with what they mean on other scales.
 *
 * Source: Larsen K & Merlo J (2005) Am J Epidemiol 161:81-88 (median odds ratio); Snijders TAB & Bosker RJ (2012) Multilevel
 * Analysis, 2nd ed., section 17.3.2 (latent scale).
 */
export function randomIntercepts(spreads: readonly Spread[], level: number): readonly RandomIntercept[] {
  const total = spreads.reduce((sum, { sd }) => sum + sd * sd, LATENT_VARIANCE);
  const z = normalQuantile((1 + level) / 2);
  let shared = 0;
  return spreads.map(({ name, count, sd, seLogSd }) => {
    shared += sd * sd;
    return {
      name,
      count,
      sd,
      seLogSd,
      lower: seLogSd === null ? null : sd * Math.exp(-z * seLogSd),
      upper: seLogSd === null ? null : sd * Math.exp(z * seLogSd),
      boundary: sd === 0,
      icc: shared / total,
      medianOddsRatio: Math.exp(Math.SQRT2 * sd * normalQuantile(0.75)),
      note: noteOn(name, count, sd),
    };
  });
}

function noteOn(name: string, count: number, sd: number): string | null {
  if (sd === 0) {
    return `The likelihood is highest with no difference between groups of ${name} beyond chance and terms: their SD is put at 0, without limits. That is not proof that they are alike.`;
  }
  return count < FEW
    ? `With ${count} groups of ${name}, fewer than ${FEW}, their SD is known poorly and tends to come out too small.`
    : null;
}
