import type { NotEnoughData } from "../Answer.js";

/** Questions of the climate study, by short name. */
const words = {
  "study-declaration": "What was declared before anything was estimated?",
  "study-records": "Who is in the study, and what was lost on the way?",
  "study-description": "How frequent is thrush, how often does it come and stay, and where?",
  "study-exposure": "How wet was it before the visits, and is that more than the season?",
  "rain-effect": "Does wet ground make frogs worse, by how much, and how sure is that?",
  "rain-lag-and-shape": "How long after rain, in what shape, and does it hold for yards not looked at?",
  "rain-sensitivity": "Would the answer survive other choices?",
  "yard-changes": "Did prevalence change more at a yard that changed something than at the others?",
  "detectable-effect": "What effect could a study of this size find?",
  "horn-colour": "Do light feet get thrush more than dark ones of the same horse?",
  "interval-length": "Do feet on longer intervals get thrush more, shod and bare apart?",
  "study-paper": "What goes into the paper?",
} as const;

/** Short name of a question of the climate study. */
export type ClimateQuestionId = keyof typeof words;

/** The question in words, and a reply that there is not enough. */
export function asked<Id extends ClimateQuestionId>(
  id: Id,
): { readonly id: Id; readonly question: string; readonly notEnough: (reason: string) => NotEnoughData } {
  const question = words[id];
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
