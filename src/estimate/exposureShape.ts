import { quantileSorted } from "simple-statistics";
import { adjustedWords } from "./climate/adjustedWords.js";
import { fittedModel } from "./climate/fittedModel.js";
import { profileOf } from "./climate/profileOf.js";
import { requireRows } from "./design/requireRows.js";
import { EstimateError } from "./EstimateError.js";
import type { ExposureModel } from "./ExposureModel.js";
import { naturalSpline } from "./naturalSpline.js";
import type { RandomSource } from "./numeric/RandomSource.js";
import { requireNumber } from "./numeric/requireNumber.js";
import type { RatioBand } from "./RatioBand.js";
import { waldTest, type WaldTest } from "./waldTest.js";

/** How to draw the curve. */
export interface ShapeOptions {
  readonly at: readonly number[];
  /** The exposure all others are compared with. */
  readonly reference: number;
  /** Inner knots; the 25th, 50th and 75th percentile of the exposure, boundary knots at its ends, when left out. */
  readonly knots?: readonly number[];
  readonly random: RandomSource;
}

/** How the odds move over an exposure, straight or not. */
export interface ExposureShape {
  /** Odds ratio against the reference. */
  readonly points: readonly (RatioBand & { readonly exposure: number })[];
  readonly reference: number;
  /** Test that the log odds move in a straight line. */
  readonly curvature: WaldTest;
  readonly level: number;
  readonly n: number;
  readonly cases: number;
  readonly missing: number;
  readonly clusteredBy: string;
  readonly clusters: number;
  readonly adjustedFor: readonly string[];
  readonly method: string;
  readonly notes: readonly string[];
}

/**
 * The odds over an exposure without taking the line to be straight: a natural cubic spline, odds ratios against a reference, bands for each point and for the whole
 * curve, and a test of curvature.
 *
 * Method: the exposure and all but the last function of `naturalSpline` as terms, which together span the spline, so that the joint test of the latter is the test of curvature; the rest as
 * `effectOfExposure`, bands as `lagProfile`.
 *
 * Missing: as `effectOfExposure`. Errors: those of it, refusals too; `too_few` for an exposure with fewer than five different values.
 *
 * Source: Durrleman S, Simon R (1989) Stat Med 8:551-561.
 */
export function exposureShape(model: ExposureModel, options: ShapeOptions): ExposureShape {
  const { exposure, adjust = [] } = model;
  const level = model.level ?? 0.95;
  const valueOf = (row: object) => (row as Readonly<Record<string, unknown>>)[exposure];
  requireRows(model.rows);
  const values = model.rows
    .map(valueOf)
    .filter((value) => value !== null && value !== undefined)
    .map((value) => requireNumber(exposure, value as number))
    .sort((a, b) => a - b);
  if (new Set(values).size < 5) {
    throw new EstimateError(
      "too_few",
      `Fewer than five different values of ${exposure} are known.`,
      "A curve needs more exposures.",
    );
  }
  const knots = options.knots ?? [...new Set([0.25, 0.5, 0.75].map((share) => quantileSorted(values, share)))];
  const boundary = [values[0]!, values.at(-1)!] as const;
  const basis = naturalSpline({ knots: knots.filter((knot) => knot > boundary[0] && knot < boundary[1]), boundary });
  const bends = (value: number) => basis(value).slice(0, -1);
  const names = bends(values[0]!).map((_value, j) => `${exposure} bend ${j + 1}`);
  const rows = model.rows.map((row) => {
    const value = valueOf(row);
    const columns = typeof value === "number" ? bends(value) : names.map(() => null);
    return { ...row, ...Object.fromEntries(names.map((name, j) => [name, columns[j]!])) };
  });
  const fitted = fittedModel({ ...model, rows, terms: [exposure, ...names, ...adjust] });
  const places = [exposure, ...names].map((name) => fitted.design.names.indexOf(name));
  const line = (value: number) => [value, ...bends(value)];
  const from = line(options.reference);
  const contrasts = options.at.map((value) => line(value).map((each, j) => each - from[j]!));
  const bands = profileOf(fitted, places, contrasts, level, options.random);
  return {
    points: bands.map((band, place) => ({ exposure: options.at[place]!, ...band })),
    reference: options.reference,
    curvature: waldTest(fitted.fit, names),
    level,
    n: fitted.fit.n,
    cases: fitted.cases,
    missing: fitted.fit.dropped.reduce((sum, { count }) => sum + count, 0),
    clusteredBy: fitted.clusteredBy,
    clusters: fitted.clusters,
    adjustedFor: adjustedWords(adjust),
    method: `Natural cubic spline of ${exposure}, inner knots at ${knots.map((knot) => Number(knot.toPrecision(3))).join(", ")}; pointwise and simultaneous bands. ${fitted.fit.method}`,
    notes: fitted.fit.notes,
  };
}
