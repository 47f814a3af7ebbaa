import type { Term } from "../Term.js";

/** Names of the columns a term reads. */
export function columnsOfTerm(term: Term): readonly string[] {
  if (typeof term === "string") return [term];
  if ("product" in term) return term.product.flatMap(columnsOfTerm);
  return ["season" in term ? term.season : term.column];
}
