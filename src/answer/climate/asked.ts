import type { NotEnoughData } from "../Answer.js";
import { asked as askedOf, type QuestionId } from "../asked.js";

/** The question in words, and a reply that there is not enough. */
export function asked<Id extends QuestionId>(
  id: Id,
): { readonly id: Id; readonly question: string; readonly notEnough: (reason: string) => NotEnoughData } {
  const { question } = askedOf(id);
  return { id, question, notEnough: (reason) => ({ kind: "not_enough_data", id, question, reason }) };
}

/** Said beside every estimate of rain. */
export const rainCautions: readonly string[] = [
  "Went with, not caused: wet weeks differ from dry ones in more than rain, and not all of it is recorded.",
  "One gauge stands for every field of a yard: exposure is at yard level, and ground can be wet from dew without any rain.",
  "No published effect of rain on thrush is known to compare with.",
];

/** Seed of everything drawn in the climate study, printed with it. */
export const climateSeed = "climate study";
