import { quoted } from "./quoted.js";

/** The end of a hint: what a misspelt name may have been meant for; empty when nothing is near. */
export function did(nearest: string | null): string {
  return nearest === null ? "" : ` Was ${quoted(nearest)} meant?`;
}
