import type { FootVisit } from "../../study/FootVisit.js";

/** One animal on one day whose rows do not look like a horse's feet. */
export interface NonEquineDay {
  readonly horseId: string;
  readonly visitDate: string;
  readonly rows: readonly FootVisit[];
  /** What speaks for another animal, each as a clause with its numbers; two or more. */
  readonly signs: readonly string[];
}
