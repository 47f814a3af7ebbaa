import type { StudyJson } from "./StudyJson.js";

/** What a draft says about one file, or several that are made alike. */
export interface DraftNote {
  readonly files: readonly string[];
  /** What its rows seem to be, in words; null: it could not be told. */
  readonly rows: string | null;
  /** What was recognised, each with its evidence. */
  readonly evidence: readonly string[];
}

/** A proposal for `study.json`. */
export interface StudyDraft {
  /** null stands for what could not be told. */
  readonly json: StudyJson;
  readonly notes: readonly DraftNote[];
  /** What the user must answer: where null stands, and the question. */
  readonly questions: readonly { readonly path: string; readonly question: string }[];
}
