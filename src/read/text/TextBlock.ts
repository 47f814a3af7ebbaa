import type { LineFault } from "./LineFault.js";

/** Some complete physical lines of a file, in order, without their line ends. */
export interface TextBlock {
  readonly lines: readonly string[];
  /** Lines that are not text, by index into `lines`. */
  readonly faults: ReadonlyMap<number, LineFault>;
}
