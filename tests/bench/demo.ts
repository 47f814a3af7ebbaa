import { execFileSync } from "node:child_process";
import { join } from "node:path";

/** Time of `npm run demo`, build included. */
export function demo(): { benchmark: "demo"; seconds: number } {
  const start = performance.now();
  execFileSync("npm", ["run", "-s", "demo"], { cwd: join(import.meta.dirname, "../.."), stdio: ["ignore", "ignore", "inherit"] });
  return { benchmark: "demo", seconds: Math.round((performance.now() - start) / 100) / 10 };
}
