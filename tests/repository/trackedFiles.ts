import { execFileSync } from "node:child_process";

export const root = `${import.meta.dirname}/../..`;

/** Files of the project, as paths from its root: those under version control and new ones that are not ignored. */
export function trackedFiles(): string[] {
  const out = execFileSync("git", ["ls-files", "-co", "--exclude-standard", "-z"], { cwd: root, encoding: "utf8" });
  return [...new Set(out.split("\0").filter((path) => path !== ""))].sort();
}
