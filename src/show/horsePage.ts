import { findingsForTheVet } from "../answer/findingsForTheVet.js";
import { generalCautions } from "../answer/generalCautions.js";
import { horseDiary } from "../answer/horseDiary.js";
import { horseHistory } from "../answer/horseHistory.js";
import { horseInWords } from "../answer/horseInWords.js";
import { horseMeasures } from "../answer/horseMeasures.js";
import type { Study } from "../study/Study.js";
import { version } from "../study/version.js";
import { findingsInWords } from "../answer/words/findingsInWords.js";
import { horseVisits } from "../derive/horseVisits.js";
import type { Page } from "./Page.js";

/**
 * The history of one horse on one sheet, for the vet: findings that are the vet's first, then all four feet. The study is cut to that horse;
 * no note and no other horse is on it. `on` is the day it is made, `YYYY-MM-DD`.
 */
export function horsePage(study: Study, horseId: string, on: string): Page {
  return {
    title: `${horseId}: a history of its feet`,
    intro: [horseInWords(study, horseId)],
    cautions: generalCautions.slice(0, 3),
    answers: [
      findingsForTheVet(study, { most: 5 }),
      horseHistory(study, { mostVisits: visitsThatFit(study), mostDrawn: 12 }),
      horseMeasures(study),
      horseDiary(study),
    ],
    report: null,
    made: { on, study: study.name, program: `underfoot ${version}`, settings: study.settings },
    settings: ["toleranceDays", "asOf"],
    compact: true,
  };
}

const mostVisits = 10;
const mostLines = 12;
const lettersALine = 24;

/** The latest visits whose table leaves the rest of the sheet its room. */
function visitsThatFit(study: Study): number {
  let [visits, lines] = [0, 0];
  for (const { feet } of horseVisits(study).reverse()) {
    const letters = [...feet.values()].map((look) => findingsInWords(look)?.length ?? 1);
    lines += Math.max(...letters.map((each) => Math.ceil(each / lettersALine)));
    if (lines > mostLines || visits === mostVisits) break;
    visits += 1;
  }
  return Math.max(1, visits);
}
