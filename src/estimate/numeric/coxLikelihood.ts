import { Matrix } from "ml-matrix";

/** Rows of a proportional hazards model in order of time, the longest first. */
export interface CoxData {
  readonly columns: readonly Float64Array[];
  /** 1 where the event happened, 0 where the watch ended first. */
  readonly events: Uint8Array;
  /** First row of each distinct time, and one past the last. */
  readonly starts: readonly number[];
  readonly ties: "efron" | "breslow";
}

/** One of the terms of the partial likelihood, as many as there are events: what was left at risk for it. */
export interface CoxTie {
  /** Which distinct time, as in `starts`. */
  readonly block: number;
  /** Share of the rows with the event at that time that is no longer at risk. */
  readonly gone: number;
  /** Sum of the hazard ratios exp(`eta`) at risk, and the mean of the columns over them. */
  readonly total: number;
  readonly mean: Float64Array;
}

/** The partial likelihood at one value of the coefficients. */
export interface CoxLikelihood {
  readonly logLik: number;
  readonly score: Float64Array;
  readonly information: Matrix;
  readonly ties: readonly CoxTie[];
}

/**
 * Partial likelihood of Cox at linear predictors `eta`, with its first and second derivatives. Tied events: Efron takes them one by one,
 * each time with the mean of those that are left; Breslow leaves all of them at risk.
 *
 * Source: Cox DR (1972) J R Stat Soc B 34:187-220; Efron B (1977) J Am Stat Assoc 72:557-565; Breslow N (1974) Biometrics 30:89-99.
 */
export function coxLikelihood({ columns, events, starts, ties }: CoxData, eta: Float64Array): CoxLikelihood {
  const p = columns.length;
  const score = new Float64Array(p);
  const information = Matrix.zeros(p, p);
  const [risk, dying] = [new Sums(p), new Sums(p)];
  const found: CoxTie[] = [];
  let logLik = 0;
  for (let block = 0; block + 1 < starts.length; block += 1) {
    dying.clear();
    let deaths = 0;
    for (let i = starts[block]!; i < starts[block + 1]!; i += 1) {
      const hazard = Math.exp(eta[i]!);
      risk.add(columns, i, hazard);
      if (events[i] !== 1) continue;
      deaths += 1;
      dying.add(columns, i, hazard);
      logLik += eta[i]!;
      for (let j = 0; j < p; j += 1) score[j]! += columns[j]![i]!;
    }
    for (let k = 0; k < deaths; k += 1) {
      const gone = ties === "efron" ? k / deaths : 0;
      const total = risk.total - gone * dying.total;
      const mean = risk.first.map((value, j) => (value - gone * dying.first[j]!) / total);
      logLik -= Math.log(total);
      for (let j = 0; j < p; j += 1) {
        score[j]! -= mean[j]!;
        for (let l = 0; l <= j; l += 1) {
          const square = (risk.second[j * p + l]! - gone * dying.second[j * p + l]!) / total - mean[j]! * mean[l]!;
          information.set(j, l, information.get(j, l) + square);
          information.set(l, j, information.get(j, l));
        }
      }
      found.push({ block, gone, total, mean });
    }
  }
  return { logLik, score, information, ties: found };
}

/** Sums over rows of a weight, the weight times the columns, and times their products. */
class Sums {
  total = 0;
  readonly first: Float64Array;
  readonly second: Float64Array;

  constructor(size: number) {
    this.first = new Float64Array(size);
    this.second = new Float64Array(size * size);
  }

  add(columns: readonly Float64Array[], row: number, weight: number): void {
    const p = columns.length;
    this.total += weight;
    for (let j = 0; j < p; j += 1) {
      const part = weight * columns[j]![row]!;
      this.first[j]! += part;
      for (let l = 0; l <= j; l += 1) this.second[j * p + l]! += part * columns[l]![row]!;
    }
  }

  clear(): void {
    this.total = 0;
    this.first.fill(0);
    this.second.fill(0);
  }
}
