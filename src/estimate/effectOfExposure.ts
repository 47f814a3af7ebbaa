import { adjustedWords } from "./climate/adjustedWords.js";
import { exposureTerm } from "./climate/exposureTerm.js";
import { fittedModel } from "./climate/fittedModel.js";
import { refusedEffect } from "./climate/refusedEffect.js";
import type { ExposureEffect } from "./ExposureEffect.js";
import type { ExposureModel } from "./ExposureModel.js";

/**
 * Odds ratio of an exposure in one model, with errors that allow for feet of one horse, and horses of one yard, being alike.
 *
 * Method: `mixed`: logistic regression with random intercepts by nested quadrature (`fitMixedLogistic`), errors from the spread of the outer groups'
 * scores times G / (G - 1), by t with G - p degrees of freedom for G outer groups and p coefficients. `gee`: estimating equations with the outer groups as
 * clusters, their errors times the root of G / (G - p) (`fitGee`). With fewer than `minimumGroups` outer groups these are terms of the model, the inner groups the clusters; outer
 * groups all of whose rows agree are left out, as they say nothing.
 *
 * Missing: rows with something missing are left out and counted. What the records cannot carry is no error here: `refused` names the reason, `note` says it.
 *
 * Errors: those of the fit that are faults of the call: `unknown_column`, `not_a_number`, `not_a_date`, `out_of_range`, `not_a_count`.
 *
 * Source: Liang KY, Zeger SL (1986) Biometrika 73:13-22; Pinheiro JC, Chao EC (2006) J Comput Graph Stat 15:58-81.
 */
export function effectOfExposure(model: ExposureModel, options: { readonly name?: string } = {}): ExposureEffect {
  const { adjust = [] } = model;
  const { term, contrast } = exposureTerm(model);
  const { method = "mixed", level = 0.95 } = model;
  const name = options.name ?? { mixed: "Mixed model", gee: "Estimating equations" }[method];
  const base = { name, contrast, adjustedFor: adjustedWords(adjust), level };
  return refusedEffect(base, () => {
    const fitted = fittedModel({ ...model, terms: [term, ...adjust] });
    const found = fitted.fit.coefficients.find((one) => one.name === contrast)!;
    return {
      ...base,
      ...found.oddsRatio,
      seLog: found.se,
      p: found.p,
      df: found.df,
      n: fitted.fit.n,
      cases: fitted.cases,
      missing: fitted.fit.dropped.reduce((sum, { count }) => sum + count, 0),
      clusteredBy: fitted.clusteredBy,
      clusters: fitted.clusters,
      refused: null,
      method: fitted.fit.method,
      note: fitted.fit.notes.join(" ") || null,
    };
  });
}
