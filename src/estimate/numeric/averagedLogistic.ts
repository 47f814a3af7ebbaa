/** The logistic curve averaged over a normal spread of the log odds, and its derivatives by `eta` and by half the variance. */
export function averagedLogistic(
  eta: number,
  sd: number,
): { readonly mean: number; readonly slope: number; readonly bend: number } {
  if (sd === 0) {
    const risk = 1 / (1 + Math.exp(-eta));
    return { mean: risk, slope: risk * (1 - risk), bend: risk * (1 - risk) * (1 - 2 * risk) };
  }
  // The integrands have no poles within pi / sd of the line: the trapezoid rule is exact to rounding.
  const step = 0.25 / Math.max(1, sd);
  let [weight, mean, slope, bend] = [0, 0, 0, 0];
  for (let i = Math.ceil(-9 / step); i * step <= 9; i++) {
    const z = i * step;
    const density = Math.exp((-z * z) / 2);
    const risk = 1 / (1 + Math.exp(-eta - sd * z));
    const spread = risk * (1 - risk);
    weight += density;
    mean += density * risk;
    slope += density * spread;
    bend += density * spread * (1 - 2 * risk);
  }
  return { mean: mean / weight, slope: slope / weight, bend: bend / weight };
}
