import { capital } from "../../chart/parts/capital.js";
import { counted } from "./counted.js";

/** Why a study with so few horses gets no answer: `3 horses have a graded frog; fewer than 5 give no share.` */
export function tooFewHorses(horses: number, minimum: number, have: string, give: string): string {
  return capital(`${counted(horses, "horse has", "horses have")} ${have}; fewer than ${minimum} ${give}.`);
}
