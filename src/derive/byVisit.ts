/** Order of visits for sorting: by day, then by horse. The same on any machine, whatever its language. @private */
export function byVisit(
  a: { readonly visitDate: string; readonly horseId: string },
  b: { readonly visitDate: string; readonly horseId: string },
): number {
  if (a.visitDate !== b.visitDate) return a.visitDate < b.visitDate ? -1 : 1;
  if (a.horseId !== b.horseId) return a.horseId < b.horseId ? -1 : 1;
  return 0;
}
