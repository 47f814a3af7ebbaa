/** The coefficients of a fit but its intercept, in words: `wet, hind and ground: clay`; `the intercept alone` when there is none. */
export function termWords(names: readonly string[]): string {
  const terms = names.filter((name) => name !== "intercept");
  if (terms.length < 2) return terms[0] ?? "the intercept alone";
  return `${terms.slice(0, -1).join(", ")} and ${terms.at(-1)!}`;
}
