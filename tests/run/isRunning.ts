import { readFileSync } from "node:fs";

/** Whether a process of this id still runs; one that has ended and was not yet collected by its parent does not. */
export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
  } catch {
    return false;
  }
  try {
    return !/^\d+ \(.*\) [ZX]/s.test(readFileSync(`/proc/${pid}/stat`, "utf8"));
  } catch {
    return process.platform !== "linux";
  }
}
