import type { ExposureModel } from "../ExposureModel.js";
import type { Term } from "../Term.js";

/** The exposure as a term of the model, and the name of its coefficient. */
export function exposureTerm({ exposure, per = 1 }: Pick<ExposureModel, "exposure" | "per">): {
  readonly term: Term;
  readonly contrast: string;
} {
  return per === 1
    ? { term: exposure, contrast: exposure }
    : { term: { column: exposure, per }, contrast: `${exposure} per ${per}` };
}
