import type { CoxData, CoxTie } from "./coxLikelihood.js";

/**
 * Score residuals of the rows of a proportional hazards model: one array a coefficient, one number a row. They add up to the score,
 * and their sums over clusters make the sandwich of robust errors.
 *
 * Source: Lin DY, Wei LJ (1989) J Am Stat Assoc 84:1074-1078; for tied events each of them in turn as in Efron B (1977) J Am Stat
 * Assoc 72:557-565.
 */
export function coxResiduals({ columns, events, starts }: CoxData, eta: Float64Array, ties: readonly CoxTie[]): Float64Array[] {
  const p = columns.length;
  const residuals = columns.map(() => new Float64Array(eta.length));
  // Sums over the events up to a time of 1 / total and of mean / total.
  let hazard = 0;
  const weighted = new Float64Array(p);
  let last = ties.length;
  for (let block = starts.length - 2; block >= 0; block -= 1) {
    let first = last;
    while (first > 0 && ties[first - 1]!.block === block) first -= 1;
    const here = ties.slice(first, last);
    last = first;
    // What a row with the event at this time was at risk for of it.
    const own = here.reduce((sum, { gone, total }) => sum + (1 - gone) / total, hazard);
    const ownWeighted = weighted.map((value, j) =>
      here.reduce((sum, { gone, total, mean }) => sum + ((1 - gone) * mean[j]!) / total, value),
    );
    const middle = weighted.map((_, j) => here.reduce((sum, { mean }) => sum + mean[j]! / here.length, 0));
    for (const { total, mean } of here) {
      hazard += 1 / total;
      for (let j = 0; j < p; j += 1) weighted[j]! += mean[j]! / total;
    }
    for (let i = starts[block]!; i < starts[block + 1]!; i += 1) {
      const died = events[i] === 1;
      const ratio = Math.exp(eta[i]!);
      for (let j = 0; j < p; j += 1) {
        const x = columns[j]![i]!;
        residuals[j]![i] = died ? x - middle[j]! - ratio * (x * own - ownWeighted[j]!) : -ratio * (x * hazard - weighted[j]!);
      }
    }
  }
  return residuals;
}
