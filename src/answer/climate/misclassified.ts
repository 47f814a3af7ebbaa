import { adjustedWords } from "../../estimate/climate/adjustedWords.js";
import { exposureTerm } from "../../estimate/climate/exposureTerm.js";
import { refusedEffect } from "../../estimate/climate/refusedEffect.js";
import type { ClassifiedOutcome } from "../../estimate/ClassifiedOutcome.js";
import { EstimateError } from "../../estimate/EstimateError.js";
import type { ExposureEffect } from "../../estimate/ExposureEffect.js";
import type { ExposureModel } from "../../estimate/ExposureModel.js";
import { fitMisclassifiedLogistic } from "../../estimate/fitMisclassifiedLogistic.js";
import { certain } from "./certain.js";

/** The effect if the examination missed some cases and called some clear feet cases, alike in wet and dry. */
export function misclassified(model: ExposureModel, { sensitivity, specificity }: ClassifiedOutcome): ExposureEffect {
  const { rows, outcome, groups, adjust = [], level = 0.95, minimumGroups = 10 } = model;
  const { term, contrast } = exposureTerm(model);
  const yards = new Set(rows.map((row) => (row as Readonly<Record<string, unknown>>)[groups[0]])).size;
  const cluster = yards < minimumGroups ? [...groups] : groups[0];
  const base = {
    name: `Sensitivity ${sensitivity}, specificity ${specificity}`,
    contrast,
    adjustedFor: adjustedWords(adjust),
    level,
  };
  return refusedEffect(base, () => {
    const fit = statedValues(() =>
      fitMisclassifiedLogistic({ rows, outcome, terms: [term, ...adjust], cluster, level, sensitivity, specificity }),
    );
    const found = certain(fit.coefficients.find(({ name }) => name === contrast));
    return {
      ...base,
      ...found.oddsRatio,
      ...{ seLog: found.se, p: found.p, df: found.df, n: fit.n, cases: fit.cases },
      missing: fit.dropped.reduce((sum, { count }) => sum + count, 0),
      clusteredBy: certain([cluster].flat().at(-1)),
      clusters: fit.clusters,
      refused: null,
      method: fit.method,
      note: fit.notes.join(" ") || null,
    };
  });
}

/** Values that cannot have produced the records are a reason of the records here, as they are tried and not measured. */
function statedValues<Fit>(make: () => Fit): Fit {
  try {
    return make();
  } catch (fault) {
    if (fault instanceof EstimateError && fault.code === "out_of_range")
      throw new EstimateError("no_variation", fault.message, fault.hint);
    throw fault;
  }
}
