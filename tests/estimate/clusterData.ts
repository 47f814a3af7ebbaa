import type { ClusterCount } from "../../src/estimate/ClusterCount.js";
import { closedForm } from "./closedForm.js";
import { referenceRows } from "./reference.js";

/** Clusters written as "cases/n cases/n ...". */
export function clustersOf(text: string): ClusterCount[] {
  return text.split(" ").map((pair) => {
    const [cases, n] = pair.split("/").map(Number) as [number, number];
    return { cases, n };
  });
}

/** Contagious bovine pleuropneumonia by herd (lme4 1.1-31, cbpp), over all periods or in the first. */
export function cattleHerds(firstPeriodOnly: boolean): ClusterCount[] {
  const herds = new Map<unknown, { cases: number; n: number }>();
  for (const { herd, incidence, size, period } of referenceRows("cbpp.csv")) {
    if (firstPeriodOnly && period !== 1) continue;
    const sum = herds.get(herd) ?? { cases: 0, n: 0 };
    herds.set(herd, { cases: sum.cases + Number(incidence), n: sum.n + Number(size) });
  }
  return [...herds.values()];
}

/** Presence of bacteria in swabs by child (MASS 7.3-58.2, bacteria). */
export function swabs(): ClusterCount[] {
  const sizes = closedForm("bacteria n");
  return closedForm("bacteria cases").map((cases, i) => ({ cases, n: sizes[i]! }));
}

/** Wheeze by child at four ages (geepack 1.3.9, ohio). */
export function wheeze(): ClusterCount[] {
  return referenceRows("ohio.csv").flatMap(({ pattern, children }) => {
    const cases = String(pattern).replaceAll("0", "").length;
    return Array.from({ length: Number(children) }, () => ({ cases, n: 4 }));
  });
}

/** Rat pups surviving by litter: Weil 1970, Fd Cosmet Toxicol 8:177-182, Table 1, via Williams 1975, Biometrics 31:949-952 (R package aod, rats). */
export const litters = {
  control: clustersOf("13/13 12/12 9/9 9/9 8/8 8/8 12/13 11/12 9/10 9/10 8/9 11/13 4/5 5/7 7/10 7/10"),
  treated: clustersOf("12/12 11/11 10/10 9/9 10/11 9/10 9/10 8/9 8/9 4/5 7/9 4/7 5/10 3/6 3/10 0/7"),
} as const;
