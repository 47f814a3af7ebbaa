import { binomialOutcome } from "../design/binomialOutcome.js";
import { columnsOfTerm } from "../design/columnsOfTerm.js";
import { groupIndex } from "../design/groupIndex.js";
import { designMatrix, type DesignMatrix } from "../designMatrix.js";
import { EstimateError } from "../EstimateError.js";
import type { ExposureModel } from "../ExposureModel.js";
import { fitGee, type GeeFit, type GeeOptions } from "../fitGee.js";
import type { OddsCoefficient } from "../fitLogistic.js";
import { fitMixedLogistic, type MixedLogisticFit } from "../fitMixedLogistic.js";
import { coefficientTable } from "../regression/coefficientTable.js";
import { ratioCoefficients } from "../regression/ratioCoefficients.js";
import type { RegressionFit } from "../RegressionFit.js";
import type { Term } from "../Term.js";
import { yardRobust } from "./yardRobust.js";

/** A model to fit, whatever stands on its right-hand side. */
export type ModelChoices = Omit<ExposureModel, "exposure" | "per" | "adjust"> & { readonly terms: readonly Term[] };

/** A fitted model of clustered feet, with errors that allow for the clusters. */
export interface FittedModel {
  readonly fit: RegressionFit<OddsCoefficient>;
  /** Covariance of the coefficients and, for a mixed model, the logarithms of the SDs above 0. */
  readonly parameters: readonly (readonly number[])[];
  /** SDs of the random intercepts; none for estimating equations, whose curve is that of the population already. */
  readonly sds: readonly number[];
  readonly design: DesignMatrix;
  readonly cases: number;
  readonly clusteredBy: string;
  readonly clusters: number;
  /** Log-likelihood; null for estimating equations. */
  readonly logLik: number | null;
}

/** Names a horse within its yard where the horse is the cluster. */
const JOINED = "horse within yard";

/**
 * Fits the model: with enough outer groups clustered by them, with fewer the outer groups as terms and the inner groups as clusters.
 *
 * A mixed model takes its errors from the scores of the outer groups (`yardRobust`), times G / (G - 1), with t on G - p degrees of freedom, G outer
 * groups and p coefficients; without that many groups from the information. With G / (G - p) limits of an exposure that changes within the outer groups are too wide
 * (docs/planted-truth.md).
 *
 * Errors: those of the fit.
 */
export function fittedModel(choices: ModelChoices): FittedModel {
  const { rows, outcome, groups, minimumGroups = 10 } = choices;
  const name = typeof outcome === "string" ? outcome : outcome.cases;
  const outer = groups[0];
  const positive = [typeof outcome === "string" ? [] : outcome.n, choices.weights ?? []].flat();
  const { used } = designMatrix(rows, choices.terms, { outcome: name, also: groups, positive });
  const { index, count, labels } = groupIndex(rows, used, [outer]);
  if (count >= minimumGroups || groups.length === 1) return clustered(choices, count);
  const inner = groups[1];
  // Only what the model reads is copied: a row of a study may have a hundred columns.
  const read = new Set([name, ...positive, ...groups, ...choices.terms.flatMap(columnsOfTerm)]);
  const joined = rows.map((row) => {
    const copy: Record<string, unknown> = {};
    for (const column of read) copy[column] = (row as Readonly<Record<string, unknown>>)[column];
    const { [outer]: yard, [inner]: horse } = copy;
    copy[JOINED] = missing(yard) || missing(horse) ? null : JSON.stringify([yard, horse]);
    return copy;
  });
  const { cases, n } = binomialOutcome(rows, used, outcome);
  const sums = labels.map(() => ({ cases: 0, n: 0 }));
  index.forEach((group, i) => {
    sums[group]!.cases += cases[i]!;
    sums[group]!.n += n[i]!;
  });
  const kept = labels
    .map(([label]) => label!)
    .filter((_, group) => sums[group]!.cases > 0 && sums[group]!.cases < sums[group]!.n);
  const inKept = joined.filter((row) => kept.includes((row as Readonly<Record<string, unknown>>)[outer] as string));
  const few = `${count} ${count === 1 ? "group" : "groups"} of ${outer}: the effect holds for these only, and whatever all see on one day beside the terms counts as chance.`;
  const silent = count - kept.length;
  const alike =
    silent === 0 ? [] : [`${silent} of them, all cases or all clear, say nothing about the effect and were left out.`];
  const terms = kept.length < 2 ? choices.terms : [...choices.terms, { column: outer, reference: kept[0]! }];
  const horses = groupIndex(inKept, Int32Array.from(inKept.keys()), [JOINED]).count;
  const model = clustered({ ...choices, rows: inKept, terms, groups: [JOINED] }, horses);
  return { ...model, clusteredBy: inner, fit: { ...model.fit, notes: [few, ...alike, ...model.fit.notes] } };
}

function clustered(choices: ModelChoices, count: number): FittedModel {
  const { groups, minimumGroups = 10 } = choices;
  if (choices.method === "gee") return estimatingEquations(choices);
  const model = mixed(choices, count);
  const size = model.design.names.length;
  const df = count - size;
  if (count >= minimumGroups && df >= 1) return robust(choices, model, df);
  const note = `${count} groups of ${groups[0]} are too few for errors from their own spread with ${size} coefficients; errors from the model.`;
  return { ...model, fit: { ...model.fit, notes: [note, ...model.fit.notes] } };
}

interface MixedModel extends FittedModel {
  readonly mixed: MixedLogisticFit;
}

function mixed(choices: ModelChoices, clusters: number): MixedModel {
  const { rows, outcome, terms, groups } = choices;
  const level = choices.level ?? 0.95;
  if (choices.weights !== undefined) {
    throw new EstimateError("out_of_range", "A mixed model takes no weights.", 'Use method: "gee" with weights.');
  }
  const fit = fitMixedLogistic({ rows, outcome, terms, groups, level });
  const design = designOf(choices);
  return {
    mixed: fit,
    fit,
    parameters: fit.parameters.covariance,
    sds: fit.groups.map(({ sd }) => sd),
    design,
    cases: fit.cases,
    clusteredBy: groups[0],
    clusters,
    logLik: fit.logLik,
  };
}

function missing(value: unknown): boolean {
  return value === null || value === undefined;
}

/** The same estimates with errors from the spread of the scores between the outer groups. */
function robust(choices: ModelChoices, { mixed: fit, ...model }: MixedModel, df: number): FittedModel {
  const { rows, outcome, groups } = choices;
  const { names, used } = model.design;
  const { cases, n } = binomialOutcome(rows, used, outcome);
  const { covariance, count } = yardRobust(rows, model.design, fit, groups, cases, n);
  const scaled = covariance.mul(count / (count - 1)).to2DArray();
  const own = scaled.slice(0, names.length).map((row) => row.slice(0, names.length));
  const estimates = fit.coefficients.map(({ estimate }) => estimate);
  const coefficients = ratioCoefficients(coefficientTable(names, estimates, own, fit.level, df), "oddsRatio");
  const how = `errors from the scores of ${count} groups of ${groups[0]}, times the root of G/(G-1); limits and tests by t with ${df} degrees of freedom`;
  const method = `${fit.method.split("; errors from the observed information")[0]!}; ${how}`;
  return { ...model, parameters: scaled, fit: { ...fit, coefficients, covariance: own, method } };
}

function estimatingEquations(choices: ModelChoices): FittedModel {
  const { rows, outcome, terms, groups, weights } = choices;
  const common = { rows, outcome, terms, cluster: groups[0], level: choices.level ?? 0.95, correction: "clusters" } as const;
  // With weights pairs of feet must not count, or the weights would not do what they are for.
  const fit = weights === undefined ? alike(common) : fitGee({ ...common, weights, correlation: "independence" });
  return {
    fit,
    parameters: fit.covariance,
    sds: [],
    design: designOf(choices),
    cases: fit.cases,
    clusteredBy: groups[0],
    clusters: fit.clusters,
    logLik: null,
  };
}

function designOf({ rows, outcome, terms, groups, weights }: ModelChoices): DesignMatrix {
  const single = typeof outcome === "string";
  return designMatrix(rows, terms, {
    outcome: single ? outcome : outcome.cases,
    also: groups,
    positive: [single ? [] : outcome.n, weights ?? []].flat(),
  });
}

/** With feet of a cluster alike, or where no such correlation can be had without correlation: the errors are robust either way. */
function alike(common: GeeOptions): GeeFit {
  try {
    return fitGee(common);
  } catch (fault) {
    const unsettled =
      fault instanceof EstimateError && (fault.code === "not_converged" || fault.message.startsWith("The correlation within"));
    if (!unsettled) throw fault;
    const fit = fitGee({ ...common, correlation: "independence" });
    return {
      ...fit,
      notes: [
        "A common correlation within clusters could not be had; worked as if there were none, with robust errors.",
        ...fit.notes,
      ],
    };
  }
}
