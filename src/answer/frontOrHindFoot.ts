import { toeShapeChart } from "../chart/toeShapeChart.js";
import type { Table } from "../chart/Table.js";
import { tracedOutlines } from "../derive/tracedOutlines.js";
import { describedOutlines, type OutlineDescription } from "../estimate/describedOutlines.js";
import type { FootJudged, FrontOrHind } from "../estimate/frontOrHind.js";
import { frontOrHind } from "../estimate/frontOrHind.js";
import type { ClassificationTable } from "../estimate/ClassificationTable.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { counted } from "./words/counted.js";
import { footInWords } from "./words/footInWords.js";
import { howSure } from "./words/howSure.js";
import { listed } from "./words/listed.js";
import { percentage } from "./words/percentage.js";
import { shortDate } from "./words/shortDate.js";

const { id, question } = asked("front-or-hind");
const terms = ["shapeIndex", "toeTaper", "widestFromToe", "circularity"];
/** A label is pointed out when its own chance is below this. */
const DOUBTFUL = 0.05;

/** A rule from traced outlines that tells front from hind, how often it is wrong, and what it says of specimens. Unit: an outline. */
export function frontOrHindFoot(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses } = study.settings;
  const species = new Map(study.horses.map((stay) => [stay.horseId, stay.species]));
  const outlines = tracedOutlines(study, { mirrorLeft: true }).filter(
    ({ horseId }) => !["donkey", "mule"].includes(species.get(horseId) ?? "horse"),
  );
  const { rows, leftOut } = describedOutlines(outlines);
  const horses = new Set(rows.filter(({ side }) => side !== null).map(({ horseId }) => horseId)).size;
  const ends = new Set(rows.filter(({ side }) => side !== null).map(({ end }) => end)).size;
  if (horses < minimumHorses || ends < 2 || rows.length <= terms.length + 2) {
    const reason = `Usable outlines of feet of known side come from ${counted(horses, "horse")}${ends < 2 ? ", not from both ends" : ""}; fewer than ${minimumHorses} horses, or one end alone, give no rule.`;
    return { kind: "not_enough_data", id, question, reason };
  }
  const rule = frontOrHind(rows, terms, { level });
  const { crossValidated } = rule.discriminant;
  const doubtful = rule.known.filter((judged) => labelChance(judged) < DOUBTFUL);
  const wrong = howSure({ ...crossValidated.errorRate, estimate: crossValidated.errorRate.estimate ?? 0 });
  return {
    kind: "answer",
    id,
    question,
    sentence: `Going by the outline alone, front and hind were mistaken for each other in ${crossValidated.errors} of ${counted(crossValidated.n, "outline")} of horses the rule had not seen: ${wrong}.${specimenWords(rule)}${doubtWords(doubtful.length)}`,
    tables: [errorsTable(rule), ...specimenTable(rule), ...doubtfulTable(doubtful)],
    charts: [
      toeShapeChart(
        [...rule.known, ...rule.specimens].map((judged) => {
          const { horseId, foot, side, end, shapeIndex, toeTaper } = judged.foot;
          const kind = side === null ? "specimen" : end === "fore" ? "front" : "hind";
          return {
            name: `${horseId}, ${footInWords(foot)}`,
            kind,
            shapeIndex,
            toeTaper,
            probabilityFore: judged.probabilityFore,
          };
        }),
        { taken: "one for each tracing" },
      ),
    ],
    cautions: [
      "A foot that the rule doubts may be an odd foot as well as a wrong label: look at it before changing a record.",
      "The rule was made from horses of this study; of another breed, or of feet traced by another hand, it may be wrong more often.",
    ],
    method: {
      unit: "an outline",
      n: rule.n,
      missing: leftOut.length,
      text: `Linear discriminant of width over length, toe over greatest width, place of the greatest width and circularity; each horse judged by a rule made without it (${counted(rule.horses, "horse")}); both ends equally likely beforehand. ${rule.logistic === null ? `Logistic regression has no answer here: ${rule.logisticNote ?? ""}` : "Logistic regression with the same measures beside it."} Specimens make no part of the rule. Horses and ponies only.`,
      links: ["frontOrHind", "describedOutlines", "linearDiscriminant", "crossValidatedLogistic"],
    },
  };
}

type Judged = FootJudged<OutlineDescription>;
type Rule = FrontOrHind<OutlineDescription>;

function labelChance({ foot, probabilityFore }: Judged): number {
  if (probabilityFore === null) return 1;
  return foot.end === "fore" ? probabilityFore : 1 - probabilityFore;
}

function specimenWords({ specimens }: Rule): string {
  const said = specimens.flatMap(({ foot, probabilityFore }) => {
    if (probabilityFore === null) return [];
    const end = probabilityFore >= 0.5 ? "front" : "hind";
    return [`${foot.horseId} ${end} (${percentage(Math.max(probabilityFore, 1 - probabilityFore))})`];
  });
  return said.length === 0 ? "" : ` Specimens: ${listed(said)}.`;
}

function doubtWords(doubtful: number): string {
  if (doubtful === 0) return " No label is spoken against by the shape.";
  return ` The shape speaks against the label of ${counted(doubtful, "outline")}.`;
}

function errorsTable({ discriminant, logistic }: Rule): Table {
  const row = (rule: string, { classes, confusion, n, errorRate }: ClassificationTable) => {
    const of = (truth: number, said: number) => confusion[truth]?.[said] ?? 0;
    // The discriminant calls its classes fore and hind, the logistic rule no and yes, yes being fore.
    const fore = Math.max(classes.indexOf("fore"), classes.indexOf("yes"));
    const { estimate, lower, upper } = errorRate;
    return { rule, foreAsHind: of(fore, 1 - fore), hindAsFore: of(1 - fore, fore), n, estimate, lower, upper };
  };
  return {
    caption: "How often each rule is wrong",
    columns: [
      { name: "rule", title: "Rule" },
      { name: "foreAsHind", title: "Front taken for hind" },
      { name: "hindAsFore", title: "Hind taken for front" },
      { name: "n", title: "Outlines" },
      { name: "estimate", title: "Wrong", percent: true },
      { name: "lower", title: "From", percent: true },
      { name: "upper", title: "To", percent: true },
    ],
    rows: [
      row("discriminant, horses not seen", discriminant.crossValidated),
      row("discriminant, on its own horses (too good)", discriminant.resubstitution),
      ...(logistic === null ? [] : [row("logistic, horses not seen", logistic.crossValidated)]),
    ],
  };
}

const chance = [
  { name: "day", title: "Traced" },
  { name: "labelled", title: "Labelled" },
  { name: "probabilityFore", title: "Chance of a front foot", percent: true },
];

function judgedRow({ foot, probabilityFore }: Judged) {
  return { horseId: foot.horseId, day: shortDate(foot.visitDate), labelled: footInWords(foot.foot), probabilityFore };
}

function specimenTable({ specimens }: Rule): Table[] {
  if (specimens.length === 0) return [];
  const columns = [{ name: "horseId", title: "Specimen" }, ...chance];
  return [{ caption: "Specimens, by their shape", columns, rows: specimens.map(judgedRow) }];
}

function doubtfulTable(doubtful: readonly Judged[]): Table[] {
  if (doubtful.length === 0) return [];
  const columns = [{ name: "horseId", title: "Horse" }, ...chance];
  return [{ caption: "Labels the shape speaks against", columns, rows: doubtful.map(judgedRow) }];
}
