/** The numbers in a result, however deep, with the way to each: "coefficients.0.se". */
export function numbersIn(value: unknown, way = ""): readonly (readonly [string, number])[] {
  if (typeof value === "number") return [[way, value]];
  if (typeof value !== "object" || value === null) return [];
  const entries: readonly (readonly [string, unknown])[] = Object.entries(value);
  return entries.flatMap(([key, inner]) => numbersIn(inner, way === "" ? key : `${way}.${key}`));
}

/** A copy of a nest of lists and records in which the number at a way is another value. */
export function replaced(value: unknown, way: readonly string[], other: unknown): unknown {
  const [key, ...rest] = way;
  if (key === undefined) return other;
  if (Array.isArray(value)) return value.map((inner: unknown, i) => (String(i) === key ? replaced(inner, rest, other) : inner));
  const record = value as Readonly<Record<string, unknown>>;
  return { ...record, [key]: replaced(record[key], rest, other) };
}
