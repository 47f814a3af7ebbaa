import { LuDecomposition, Matrix } from "ml-matrix";
import { EstimateError } from "../EstimateError.js";
import type { EstimatingEquations } from "./exchangeable.js";

/**
 * Scores of the clusters with their own leverage taken out: (I - H_c M)^-1 u_c, H_c the information of the cluster and M the
 * inverse of the sum, which equals D'V^-1 (I - H_cc)^-1 (y - mu).
 *
 * Errors: `too_few` when a cluster alone decides a coefficient, so that nothing is left without it.
 *
 * Source: Mancl LA, DeRouen TA (2001) Biometrics 57:126-134.
 */
export function unleveredScores({ scores, inverse, informations }: EstimatingEquations): readonly Float64Array[] {
  const identity = Matrix.eye(scores.length);
  const freed = scores.map((score) => score.slice());
  informations().forEach((information, cluster) => {
    const rest = new LuDecomposition(Matrix.sub(identity, information.mmul(inverse)));
    if (rest.determinant < 1e-10) {
      throw new EstimateError(
        "too_few",
        "One cluster alone decides a coefficient, so its leverage cannot be taken out.",
        "Leave out the term that only one cluster varies in, or ask for another correction and say so.",
      );
    }
    const solved = rest.solve(Matrix.columnVector(scores.map((score) => score[cluster]!)));
    freed.forEach((score, j) => (score[cluster] = solved.get(j, 0)));
  });
  return freed;
}
