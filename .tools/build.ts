// Builds dist/: type declarations file by file, and the code as two entries with shared parts. One file loads about five times faster
// than the three hundred small ones it is made of. What is up to date is left alone: installing, packing, `npx underfoot` in this folder and
// every test command ask for a build. Remove dist/ to have it made anew.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { chmodSync, existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";

process.chdir(`${import.meta.dirname}/..`);

/** Changes whenever the build would: with the sources, the settings, and the versions of the tools. */
function fingerprint(): string {
  const sources = readdirSync("src", { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => join(parentPath, name));
  const settings = ["package-lock.json", "tsconfig.json", ".config/tsconfig.build.json", ".tools/build.ts"];
  const hash = createHash("sha256");
  for (const file of [...settings, ...sources.sort()]) hash.update(`${file}\n`).update(readFileSync(file));
  return hash.digest("hex");
}

const stamp = "dist/.built-from";
const wanted = fingerprint();
if (existsSync(stamp) && readFileSync(stamp, "utf8") === wanted) process.exit(0);

rmSync("dist", { recursive: true, force: true });
const types = spawnSync(process.execPath, ["node_modules/typescript/bin/tsc", "-p", ".config/tsconfig.build.json"], {
  stdio: "inherit",
});
if (types.status !== 0) process.exit(1);
await build({
  entryPoints: ["src/index.ts", "src/cli.ts"],
  outdir: "dist",
  bundle: true,
  splitting: true,
  chunkNames: "parts/[name]-[hash]",
  packages: "external",
  format: "esm",
  platform: "node",
  target: "node20.19",
  sourcemap: "linked",
  sourcesContent: false,
  logLevel: "warning",
});
chmodSync("dist/cli.js", 0o755);
writeFileSync(stamp, wanted);
