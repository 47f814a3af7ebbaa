import type { ExposureModel } from "../ExposureModel.js";
import { columnsOfTerm } from "../design/columnsOfTerm.js";
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

/** Terms in words, one each: `season of visitDate (2 waves)`, `end`, `wet by hind`. */
export function adjustedWords(terms: readonly Term[]): string[] {
  return terms.map((term) => {
    if (typeof term === "object" && "season" in term) {
      return `season of ${term.season}${term.harmonics === 2 ? " (2 waves)" : ""}`;
    }
    return columnsOfTerm(term).join(" by ");
  });
}
