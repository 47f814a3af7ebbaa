import { EstimateError } from "../EstimateError.js";

/**
 * The value itself when it is one of those there are to choose from: a check of what a compiler without strict settings lets through.
 *
 * Errors: `out_of_range`, naming them.
 */
export function requireOneOf<Choice extends string>(name: string, value: Choice, choices: readonly Choice[]): Choice {
  if (choices.includes(value)) return value;
  throw new EstimateError(
    "out_of_range",
    `There is no ${name} ${JSON.stringify(value)}.`,
    `Ask for one of: ${choices.join(", ")}.`,
  );
}
