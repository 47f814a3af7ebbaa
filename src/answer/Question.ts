import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import type { QuestionId } from "./asked.js";

/** Who asks. */
export type Reader = "farrier" | "yard manager" | "researcher";

/** What a question is asked about, where it is not the whole study. */
export interface Focus {
  /** One horse. */
  readonly horseId?: string;
  /** One yard: only its horses enter the answer, and no other yard is named in it. */
  readonly yardId?: string;
  /** As things stood on this day, `YYYY-MM-DD`: nothing recorded later is used. */
  readonly asOf?: string;
}

/** One question of one reader, with the function that answers it. */
export interface Question {
  /** Short name, as used on the command line: `thrush-now`. */
  readonly id: QuestionId;
  readonly reader: Reader;
  /** The question in the reader's words. */
  readonly question: string;
  /** What must be named to ask it; null when it is asked of the whole study. */
  readonly needs: "horse" | null;
  /** Throws a StudyError when the focus names a horse or yard that is not in the study, or a day that is none. */
  readonly ask: (study: Study, focus?: Focus) => Answer | NotEnoughData;
}
