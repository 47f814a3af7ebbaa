import type { Foot } from "../study/Foot.js";
import type { FootVisit } from "../study/FootVisit.js";
import type { HorseStay } from "../study/HorseStay.js";
import type { AgeClass } from "./ageClass.js";
import type { ShapeMeasure } from "./ShapeMeasure.js";

/** One shape measure of one foot on one day at one stage, with what is needed to group it; a row for a mixed model. */
export interface ShapeMeasureRow {
  readonly horseId: string;
  /** Horse and foot in one word, as a mixed model wants it. */
  readonly footId: string;
  readonly yardId: string | null;
  readonly species: HorseStay["species"];
  /** Breed or type, in the keeper's words. */
  readonly type: string | null;
  readonly ageClass: AgeClass | null;
  readonly shoeing: "bare" | "shod" | null;
  readonly visitDate: string;
  /** Days since the first row of this foot, stage and measure. */
  readonly daysSinceFirst: number;
  readonly foot: Foot;
  readonly end: "fore" | "hind" | null;
  readonly side: "left" | "right" | null;
  /** Never pool over stages; null is a group of its own. */
  readonly stage: FootVisit["stage"];
  readonly observerId: string | null;
  readonly measure: ShapeMeasure;
  readonly value: number;
}
