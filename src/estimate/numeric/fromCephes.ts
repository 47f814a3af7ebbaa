import { cephes } from "./cephes.js";

/** A number computed by cephes, or null where cephes gives up (it reports underflow, or lost digits, by throwing). */
export function fromCephes(compute: (library: ReturnType<typeof cephes>) => number): number | null {
  try {
    return compute(cephes());
  } catch (fault) {
    if (fault instanceof Error && fault.message.startsWith("cephes reports")) return null;
    throw fault;
  }
}
