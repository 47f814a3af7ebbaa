import type { DueState } from "../../derive/DueDate.js";

const words: Readonly<Record<DueState, string>> = {
  over: "over",
  past: "past its date",
  to_come: "due",
  lost: "not seen for long",
  no_plan: "no interval agreed",
  not_started: "no routine visit yet",
};

/** How a horse stands against its date, in words for a table. @private */
export function dueStateInWords(state: DueState): string {
  return words[state];
}
