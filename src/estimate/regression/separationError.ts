import { EstimateError } from "../EstimateError.js";

/**
 * The error for an outcome that some terms tell without error, in words. `direction` holds the standardised coefficients along which
 * the likelihood rises for ever; `shares` gives for each row its outcome between 0 (none) and 1 (all) or above 0 (a count).
 */
export function separationError(
  names: readonly string[],
  columns: readonly Float64Array[],
  direction: Float64Array,
  shares: Float64Array,
  outcome: string,
): EstimateError {
  const sizes = direction.map((value, j) => (names[j] === "intercept" ? 0 : Math.abs(value)));
  const largest = Math.max(...sizes);
  const guilty = names.flatMap((name, j) => (sizes[j]! > 1e-4 * largest ? [{ name, values: columns[j]! }] : []));
  const facts = guilty.flatMap(({ name, values }) => [0, 1].flatMap((value) => fact(name, value, values, shares, outcome)));
  const list = guilty.map(({ name }) => `"${name}"`).join(", ");
  return new EstimateError(
    "separation",
    `${guilty.length === 1 ? "Term" : "Terms"} ${list} ${guilty.length === 1 ? "tells" : "together tell"} the outcome "${outcome}" without error in some or all rows, so ${guilty.length === 1 ? "its coefficient has" : "their coefficients have"} no finite estimate.${facts.join("")}`,
    "Leave the term out or merge its categories, or describe those rows by an exact table.",
  );
}

/** What the rows in which a 0-1 column has the value all have in common. */
function fact(name: string, value: number, values: Float64Array, shares: Float64Array, outcome: string): readonly string[] {
  if (!values.every((other) => other === 0 || other === 1)) return [];
  const there = shares.filter((_, i) => values[i] === value);
  const all = there.every((share) => share === 0) ? "0" : there.every((share) => share === 1) ? "1" : null;
  return all === null ? [] : [` In all ${there.length} rows with ${name} = ${value}, ${outcome} is ${all}.`];
}
