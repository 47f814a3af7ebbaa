import type { Answer, NotEnoughData } from "../answer/Answer.js";
import type { DataReport } from "../study/DataReport.js";
import type { Settings } from "../study/Settings.js";

/** What a printed or mailed page holds, in its order. All texts are plain: they are shown as they are, never run as HTML. */
export interface Page {
  readonly title: string;
  /** Paragraphs under the title: what this is, over which time, for whom. */
  readonly intro: readonly string[];
  /** What must be read first: signs that are the vet's, what the page is not. */
  readonly cautions: readonly string[];
  readonly answers: readonly (Answer | NotEnoughData)[];
  /** What reading found; null leaves the part out. */
  readonly report: DataReport | null;
  readonly made: Made;
  /** Settings that matter on this page; all of them when left out. */
  readonly settings?: readonly (keyof Settings)[];
  /** For a list or a single sheet: set closely, no contents, settings in a line at the foot, and printed without what is folded up. */
  readonly compact?: boolean;
}

/** Where the numbers come from, so that they can be rebuilt. */
export interface Made {
  /** Day the page was made, `YYYY-MM-DD`; given, so that the same input makes the same page. */
  readonly on: string;
  /** Name of the study. */
  readonly study: string;
  /** Program and version. */
  readonly program: string;
  readonly settings: Settings;
}
