import { fitConditionalLogistic } from "../estimate/fitConditionalLogistic.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { caseWords } from "./caseWords.js";
import { asked } from "./climate/asked.js";
import { climateRows } from "./climate/climateRows.js";
import { oddsWords } from "./climate/oddsWords.js";
import { pWords } from "./climate/pWords.js";
import { whenPossible } from "./climate/whenPossible.js";
import { certain } from "./climate/certain.js";
import { tooFewHorses } from "./words/tooFewHorses.js";
import { levelText } from "../chart/parts/levelText.js";

const { id, question, notEnough } = asked("horn-colour");

/** Light against dark feet of the same horse at the same visit. Unit: a foot at a visit, within its horse. */
export function hornColour(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses } = study.settings;
  const rows = climateRows(study).map((row) => ({
    ...row,
    light: row.hornColour === "light" ? true : row.hornColour === "dark" ? false : null,
    hind: row.end === "hind",
    look: `${row.horseId} ${row.visitDate}`,
  }));
  const known = rows.filter((row) => row.case !== null && row.light !== null);
  const mixed = new Set(known.filter((row) => row.light === true).map((row) => row.horseId));
  const both = new Set(known.filter((row) => row.light === false && mixed.has(row.horseId)).map((row) => row.horseId)).size;
  if (both < minimumHorses)
    return notEnough(tooFewHorses(both, minimumHorses, "both light and dark feet with a grade", "cannot be compared within"));
  const fit = whenPossible(() =>
    fitConditionalLogistic({ rows, outcome: "case", terms: ["light", "hind"], strata: "look", cluster: "horseId", level }),
  );
  if (typeof fit === "string")
    return notEnough(`Feet of one horse on one day cannot be set against each other. ${fit.replace(/^Skipped: /, "")}`);
  const found = certain(fit.coefficients[0]);
  const ratio = { ...found.oddsRatio, level };
  const missing = rows.length - known.length;
  return {
    kind: "answer",
    id,
    question,
    sentence: `The odds of thrush in a light foot were ${oddsWords(ratio)} times those of a dark foot of the same horse on the same day, p ${pWords(found.p)}.`,
    tables: [
      {
        caption: `Within-horse comparison (${caseWords(study.settings)}; hind or front held equal)`,
        columns: [
          { name: "what", title: "Contrast" },
          { name: "estimate", title: "Odds ratio", digits: 2 },
          { name: "lower", title: `${levelText(level)} interval, from`, digits: 2 },
          { name: "upper", title: "to", digits: 2 },
          { name: "p", title: "p", digits: 4, p: true },
          { name: "n", title: "Feet compared" },
          { name: "looks", title: "Visits with both outcomes" },
          { name: "horses", title: "Horses with both colours" },
          { name: "missing", title: "Feet without grade or colour, or striped" },
        ],
        rows: fit.coefficients.map(({ name, oddsRatio, p }) => ({
          what: name === "light" ? "light against dark" : "hind against front",
          ...oddsRatio,
          p,
          n: fit.n,
          looks: fit.strata,
          horses: both,
          missing,
        })),
      },
    ],
    charts: [],
    cautions: [
      "A hypothesis beside the declared one: exploratory unless it was declared by itself.",
      "Horn colour goes with white legs, and these with skin that is sore sooner; within the horse that is not held equal.",
      "Striped feet are neither and are left out.",
    ],
    method: {
      unit: "a foot at a visit, within its horse and day",
      n: fit.n,
      missing,
      text: `Case: ${caseWords(study.settings)}. ${fit.method}.`,
      links: ["fitConditionalLogistic"],
    },
  };
}
