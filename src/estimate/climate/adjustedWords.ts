import { columnsOfTerm } from "../design/columnsOfTerm.js";
import type { Term } from "../Term.js";

/** Terms in words, one each: `season of visitDate (2 waves)`, `end`, `wet by hind`. */
export function adjustedWords(terms: readonly Term[]): string[] {
  return terms.map((term) => {
    if (typeof term === "object" && "season" in term) {
      return `season of ${term.season}${term.harmonics === 2 ? " (2 waves)" : ""}`;
    }
    return columnsOfTerm(term).join(" by ");
  });
}
