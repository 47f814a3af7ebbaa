import type { FootVisit } from "../../study/FootVisit.js";

/** When in a visit a measure was taken, in words. @private */
export function stageInWords(stage: FootVisit["stage"]): string {
  if (stage === null) return "stage not recorded";
  return { before_trim: "before trimming", after_trim: "after trimming", single: "one reading a visit" }[stage];
}
