import type { FootVisit } from "../../study/FootVisit.js";

const words: Readonly<Record<NonNullable<FootVisit["reason"]>, string>> = {
  routine: "routine",
  lost_shoe: "lost shoe",
  lame: "lame",
  follow_up: "follow-up",
  new_horse: "new horse",
  other: "other",
};

/** Why a visit was made, in words for a table. @private */
export function visitReasonInWords(reason: NonNullable<FootVisit["reason"]>): string {
  return words[reason];
}
