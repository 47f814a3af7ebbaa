import type { DataReport } from "../study/DataReport.js";
import type { Settings } from "../study/Settings.js";
import type { Answer, NotEnoughData } from "./Answer.js";

/** The answers of a season, in the order a farrier needs them. */
export interface Review {
  /** Name of the study. */
  readonly name: string;
  /** First and last day with a visit; null when there is none. */
  readonly from: string | null;
  readonly to: string | null;
  /** Day the review is made for. */
  readonly asOf: string | null;
  readonly answers: readonly Answer[];
  /** Questions this study cannot answer, each with what is lacking. */
  readonly unanswered: readonly NotEnoughData[];
  /** What holds of the whole review. */
  readonly cautions: readonly string[];
  readonly settings: Settings;
  readonly report: DataReport;
}
