import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fitGee } from "../../src/estimate/fitGee.js";
import { simulateNestedStudy, type SimulatedFoot } from "../../src/simulate/simulateNestedStudy.js";

/** One figure: how long exchangeable estimating equations took, from rows to result. */
export interface GeeFigure {
  readonly benchmark: "gee";
  readonly feet: number;
  readonly engine: string;
  readonly seconds: number;
  /** Processor time of that run. */
  readonly cpuSeconds: number;
}

function study(feet: number): readonly SimulatedFoot[] {
  const truth = { intercept: -2, wet: 0.5, hind: 0.6, yardSd: 0.7, horseSd: 1 };
  return simulateNestedStudy({ yards: feet / 80, horsesPerYard: 20, visits: 1, wetBy: "visit", truth }, `gee ${feet}`);
}

function ours(feet: number, rows: readonly SimulatedFoot[]): GeeFigure {
  const [start, before] = [performance.now(), process.cpuUsage()];
  fitGee({ rows, outcome: "thrush", terms: ["wet", "hind"], cluster: ["yard", "horse"], correlation: "exchangeable" });
  const { user, system } = process.cpuUsage(before);
  const seconds = (performance.now() - start) / 1000;
  return { benchmark: "gee", feet, engine: "underfoot", seconds, cpuSeconds: (user + system) / 1e6 };
}

const program = `
d <- read.csv(commandArgs(TRUE)[1]); suppressMessages(library(geepack))
run <- function() system.time(geeglm(thrush ~ wet + hind, id = interaction(yard, horse, drop = TRUE, lex.order = TRUE), data = d,
  family = binomial, corstr = "exchangeable", scale.fix = TRUE))
runs <- replicate(5, { t <- run(); c(t[["elapsed"]], t[["user.self"]] + t[["sys.self"]]) }); cat(runs[, which.min(runs[2, ])])`;

/** geepack on the same rows, the best of five runs too; null when R or geepack is not installed. */
function peer(feet: number, rows: readonly SimulatedFoot[]): GeeFigure | null {
  if (spawnSync("Rscript", ["-e", "library(geepack)"]).status !== 0) return null;
  const folder = mkdtempSync(join(tmpdir(), "feet-"));
  try {
    const file = join(folder, "feet.csv");
    const lines = rows.map(({ yard, horse, wet, hind, thrush }) => [yard, horse, wet, Number(hind), Number(thrush)].join());
    writeFileSync(file, ["yard,horse,wet,hind,thrush", ...lines, ""].join("\n"));
    const out = execFileSync("Rscript", ["-e", program, file], { encoding: "utf8" });
    const [seconds = NaN, cpuSeconds = NaN] = out.split(" ").map(Number);
    return { benchmark: "gee", feet, engine: "geepack", seconds, cpuSeconds };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** Exchangeable GEE of simulated feet, horses as clusters: 16,000, 80,000 and 400,000 feet, the best of
 * five runs; geepack on the first two when R is there. */
export function gee(print: (figure: GeeFigure) => void): void {
  ours(1600, study(1600));
  for (const feet of [16_000, 80_000, 400_000]) {
    const rows = study(feet);
    const runs = Array.from({ length: 5 }, () => ours(feet, rows));
    print(runs.reduce((best, run) => (run.cpuSeconds < best.cpuSeconds ? run : best)));
    const other = feet <= 80_000 ? peer(feet, rows) : null;
    if (other !== null) print(other);
  }
}
