import { execFileSync } from "node:child_process";
import { join } from "node:path";

/** Time to import the built library in a fresh process, the best of seven; the time of an empty process is beside it for scale. */
export function libraryImport(): { benchmark: "libraryImport"; milliseconds: number; emptyProcessMilliseconds: number } {
  const entry = new URL("dist/index.js", `file://${join(import.meta.dirname, "../..")}/`).href;
  const timed = `const t = performance.now(); await import(${JSON.stringify(entry)}); process.stdout.write(String(performance.now() - t));`;
  const once = () => Number(execFileSync(process.execPath, ["--input-type=module", "-e", timed], { encoding: "utf8" }));
  const empty = () => {
    const start = performance.now();
    execFileSync(process.execPath, ["-e", ""]);
    return performance.now() - start;
  };
  const best = (run: () => number) => Math.round(Math.min(...Array.from({ length: 7 }, run)));
  return { benchmark: "libraryImport", milliseconds: best(once), emptyProcessMilliseconds: best(empty) };
}
