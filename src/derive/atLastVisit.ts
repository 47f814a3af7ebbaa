/**
 * The rows of each horse's last visit day, in their own order; other rows are left out.
 *
 * Method: the latest day of each horse, not after `asOf` when one is given.
 *
 * Missing: the last visit is taken as it is, graded or not: going back to an older visit that was graded would mix months and make
 * horses that could not be examined look like the rest.
 */
export function atLastVisit<Row extends { readonly horseId: string; readonly visitDate: string }>(
  rows: readonly Row[],
  asOf: string | null = null,
): Row[] {
  const within = asOf === null ? rows : rows.filter(({ visitDate }) => visitDate <= asOf);
  const last = new Map<string, string>();
  for (const { horseId, visitDate } of within) if (visitDate > (last.get(horseId) ?? "")) last.set(horseId, visitDate);
  return within.filter(({ horseId, visitDate }) => last.get(horseId) === visitDate);
}
