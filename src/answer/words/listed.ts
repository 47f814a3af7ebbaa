/** Items as a phrase: `A`, `A and B`, `A, B and C`. More than `most` are cut: `A, B and 4 more`. Nothing gives `none`. */
export function listed(items: readonly string[], most = 6): string {
  const shown = items.length > most ? [...items.slice(0, most - 1), `${items.length - most + 1} more`] : items;
  const last = shown.at(-1);
  if (last === undefined) return "none";
  return shown.length === 1 ? last : `${shown.slice(0, -1).join(", ")} and ${last}`;
}
