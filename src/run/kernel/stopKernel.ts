import type { KernelProcess } from "./spawnKernel.js";
import { within } from "./within.js";

/** Each step gets this long before the next, ruder one. */
const patienceMs = 1500;

/**
 * Ends a kernel and whatever it started: `ask` first, then SIGTERM, then SIGKILL. Resolves when the process is gone and its
 * connection file too.
 */
export async function stopKernel(kernel: KernelProcess, ask: () => void): Promise<void> {
  ask();
  if ((await within(patienceMs, kernel.exited)) === null) {
    kernel.signal("SIGTERM");
    await within(patienceMs, kernel.exited);
  }
  // The kernel if it would not end, and what it had started, which may have outlived it.
  kernel.signal("SIGKILL");
  await kernel.exited;
  await kernel.forgetConnection();
}
