import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fitMixedLogistic } from "../../src/estimate/fitMixedLogistic.js";
import { simulateNestedStudy, type SimulatedFoot } from "../../src/simulate/simulateNestedStudy.js";

/** One figure: how long a fit took, from rows to result, and how high it got. */
export interface NestedLogisticFigure {
  readonly benchmark: "nestedLogistic";
  readonly feet: number;
  readonly engine: string;
  /** Median of five runs after the first when that took less than ten seconds; else the first. */
  readonly seconds: number;
  /** Processor time of that run, all threads: what `seconds` would be near on a machine with nothing else to do. */
  readonly cpuSeconds: number;
  /** The first run, with what the language compiles on the way. */
  readonly firstSeconds: number;
  readonly logLik: number;
}

const design = {
  horsesPerYard: 20,
  visits: 1,
  wetBy: "visit",
  truth: { intercept: -2, wet: 0.5, hind: 0.6, yardSd: 0.7, horseSd: 1 },
} as const;

function study(feet: number): readonly SimulatedFoot[] {
  return simulateNestedStudy({ ...design, yards: feet / 80 }, `nested logistic ${feet}`);
}

function ours(feet: number, rows: readonly SimulatedFoot[], method: "laplace" | "quadrature"): NestedLogisticFigure {
  let logLik = NaN;
  const once = () => {
    const [start, before] = [performance.now(), process.cpuUsage()];
    logLik = fitMixedLogistic({ rows, outcome: "thrush", terms: ["wet", "hind"], groups: ["yard", "horse"], method }).logLik;
    const { user, system } = process.cpuUsage(before);
    return { seconds: (performance.now() - start) / 1000, cpuSeconds: (user + system) / 1e6 };
  };
  const first = once();
  const runs = first.seconds < 10 ? [once(), once(), once(), once(), once()].sort((a, b) => a.cpuSeconds - b.cpuSeconds) : [];
  const middle = runs[2] ?? first;
  return { benchmark: "nestedLogistic", feet, engine: `underfoot ${method}`, ...middle, firstSeconds: first.seconds, logLik };
}

/** lme4 and glmmTMB on the same rows; none when R or a package is not installed. */
function peers(feet: number, rows: readonly SimulatedFoot[]): readonly NestedLogisticFigure[] {
  const folder = mkdtempSync(join(tmpdir(), "feet-"));
  try {
    const file = join(folder, "feet.csv");
    const lines = rows.map(({ yard, horse, wet, hind, thrush }) => [yard, horse, wet, Number(hind), Number(thrush)].join());
    writeFileSync(file, ["yard,horse,wet,hind,thrush", ...lines, ""].join("\n"));
    const out = execFileSync("Rscript", [`${import.meta.dirname}/nestedLogistic.R`, file], { encoding: "utf8" });
    const figures = out
      .trim()
      .split("\n")
      .map((line) => JSON.parse(line) as Omit<NestedLogisticFigure, "benchmark" | "feet">);
    return figures.map((figure) => ({ benchmark: "nestedLogistic", feet, ...figure }));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/**
 * Nested logistic regression of simulated feet, four a horse and 20 horses a yard: 16,000, 80,000 and 400,000 feet; lme4 and glmmTMB
 * on the first two when R is there.
 */
export function nestedLogistic(print: (figure: NestedLogisticFigure) => void, withPeers = true): void {
  const hasR = withPeers && spawnSync("Rscript", ["-e", "library(lme4); library(glmmTMB)"]).status === 0;
  for (const feet of [16_000, 80_000, 400_000]) {
    const rows = study(feet);
    for (const method of ["laplace", "quadrature"] as const) print(ours(feet, rows, method));
    if (hasR && feet <= 80_000) peers(feet, rows).forEach(print);
  }
}

if (process.argv[1] === import.meta.filename) {
  nestedLogistic((figure) => {
    console.log(JSON.stringify(figure));
  }, !process.argv.includes("--without-peers"));
}
