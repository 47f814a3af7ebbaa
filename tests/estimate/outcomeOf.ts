import { expect } from "vitest";
import { faultCode } from "./faultCode.js";
import { numbersIn } from "./valuesIn.js";

/**
 * The code of the error, or of a result that says it was refused; null when there is a result. A result with NaN in it fails, and so does any
 * error that is no estimate error.
 */
export function outcomeOf(run: () => unknown): string | null {
  const results: unknown[] = [];
  try {
    return faultCode(() => results.push(run()));
  } catch (fault) {
    if (results.length === 0) throw fault;
  }
  const wrong = numbersIn(results[0]).filter(([, value]) => Number.isNaN(value));
  expect(wrong, "NaN in the result").toEqual([]);
  return refusalIn(results[0]);
}

function refusalIn(result: unknown): string | null {
  if (typeof result !== "object" || result === null) return null;
  const { refused } = result as { readonly refused?: string | null };
  return refused ?? null;
}
