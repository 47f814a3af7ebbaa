import type { FootTable } from "../../../derive/fabric/FootTable.js";
import type { Expectations } from "../../../estimate/fabric/Expectations.js";
import type { Readings } from "../../../estimate/fabric/Readings.js";

/** What each set of a herd says of its horse: means of the four feet, what they should be, and horn colours as in `FootLooks`. */
export interface HorseWeights {
  readonly table: FootTable;
  readonly readings: Readings;
  readonly expectations: Expectations;
  readonly hornColour: Int8Array;
}
