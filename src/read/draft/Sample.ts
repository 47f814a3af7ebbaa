import type { Encoding } from "../text/Encoding.js";

/** The beginning of a delimited text file, as far as it is looked at. */
export interface Sample {
  readonly file: string;
  /** What must be stated of its encoding; null: nothing. */
  readonly encoding: Encoding | null;
  /** Why, in words. */
  readonly encodingEvidence: string | null;
  /** null: no delimiter parts all lines alike. */
  readonly delimiter: string | null;
  readonly delimiterEvidence: string;
  readonly header: readonly string[];
  readonly rows: readonly { readonly cells: readonly string[]; readonly line: number }[];
  /** Whether the file goes on behind what was looked at. */
  readonly cut: boolean;
}
