import type { SurvivalTime } from "../../src/estimate/SurvivalTime.js";

/** Times written as "9 13 13+", a plus for a censored one. */
export function timesOf(text: string): SurvivalTime[] {
  return text.split(" ").map((mark) => ({ time: Number.parseFloat(mark), event: !mark.endsWith("+") }));
}

/** Weeks of remission with and without maintenance: survival 3.5-3, aml (Miller 1997, Survival Analysis). */
export const leukaemia = {
  maintained: timesOf("9 13 13+ 18 23 28+ 31 34 45+ 48 161+"),
  not: timesOf("5 5 8 8 12 16+ 23 27 30 33 43 45"),
} as const;

/** Invented times in three groups with ties; the same as in tests/reference/closed-forms/references.R. */
export const threeGroups = [
  timesOf("4 9 9+ 12 20 20 33+ 41"),
  timesOf("6 9+ 15 15 15+ 28 40 52+"),
  timesOf("3 3 11 19+ 20 31 47 60 61+"),
] as const;
