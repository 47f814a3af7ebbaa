import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { caseWords } from "./caseWords.js";
import { asked } from "./climate/asked.js";
import { declaredModel } from "./climate/declaredModel.js";
import { fewestYards } from "./climate/fewestYards.js";
import { exposureWords } from "./climate/exposureWords.js";
import { stepWords } from "./climate/stepWords.js";
import { levelText } from "../chart/parts/levelText.js";

const { id, question } = asked("study-declaration");

/** What the climate study declares before it estimates anything: printed first, and all else labelled exploratory. */
export function studyDeclaration(study: Study): Answer | NotEnoughData {
  const { settings } = study;
  const { primaryExposure, exposurePer, adjustFor, level } = settings;
  const declared = declaredModel(study);
  const lines: [string, string][] = [
    ["Case", `a foot with ${caseWords(settings)}`],
    ["Unit", "a foot at a visit, in its horse, in its yard"],
    [
      "Primary exposure",
      `${primaryExposure}: ${exposureWords(primaryExposure)}, up to the last reading with no rain from after the visit`,
    ],
    ["Primary estimate", `odds ratio per ${stepWords(primaryExposure, exposurePer)}`],
    ["Held equal", adjustFor.join(", ") || "nothing"],
    [
      "Model",
      `logistic regression with random intercepts of yards and, in them, horses; below ${fewestYards} yards, yards as terms and horses as clusters`,
    ],
    ["Test", `two-sided, at ${levelText(1 - level)}; intervals at ${levelText(level)}`],
    ["Everything else", "exploratory, and labelled so"],
    [
      "Causal structure taken for granted",
      "season moves rain and, by itself, thrush; foot and observer move what is found; rain does not move who is seen when",
    ],
  ];
  const leftOut = typeof declared === "string" ? [`the declared analysis cannot be made: ${declared}`] : declared.leftOut;
  return {
    kind: "answer",
    id,
    question,
    sentence: `Declared: odds ratio of thrush (${caseWords(settings)}) per ${stepWords(primaryExposure, exposurePer)}, held equal for ${adjustFor.join(", ") || "nothing"}.`,
    tables: [
      {
        caption: "Declared before any estimate",
        columns: [
          { name: "what", title: "What" },
          { name: "declared", title: "Declared" },
        ],
        rows: [...lines, ...leftOut.map((why): [string, string] => ["Cannot be kept", why])].map(([what, text]) => ({
          what,
          declared: text,
        })),
      },
    ],
    charts: [],
    cautions: ["A declaration counts when it was fixed before the records were looked at; the toolkit cannot know that."],
    method: {
      unit: "a study",
      n: study.visits.length,
      missing: 0,
      text: "Read from the settings of the study: caseGrade, primaryExposure, exposurePer, adjustFor, level. n: rows of the visits.",
      links: ["effectOfExposure", "exposureBeforeVisits", "thrushCases"],
    },
  };
}
