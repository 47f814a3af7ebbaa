import { toeShapeChart } from "../chart/toeShapeChart.js";
import type { Chart } from "../chart/Chart.js";
import type { Table } from "../chart/Table.js";
import { footSide } from "../derive/footSide.js";
import { tracedOutlines } from "../derive/tracedOutlines.js";
import { describedOutlines, type OutlineDescription } from "../estimate/describedOutlines.js";
import { type FootEndChance, footEndChances, type FootEndRule } from "../estimate/footEndChances.js";
import type { FrontOrHind } from "../estimate/frontOrHind.js";
import { frontOrHind } from "../estimate/frontOrHind.js";
import type { ClassificationTable } from "../estimate/ClassificationTable.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { counted } from "./words/counted.js";
import { footInWords } from "./words/footInWords.js";
import { howSure } from "./words/howSure.js";
import { listed } from "./words/listed.js";
import { percentage } from "./words/percentage.js";
import { shortDate } from "./words/shortDate.js";
import { stageInWords } from "./words/stageInWords.js";

const { id, question } = asked("front-or-hind");
/** A label is pointed out when its own chance is below this. */
const DOUBTFUL = 0.05;

/** Rules from traced outlines and from caliper readings that tell front from hind, how often they are wrong, and what they say of specimens. Unit: an outline, or a reading. */
export function frontOrHindFoot(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses } = study.settings;
  const { feet, rules, notes } = footEndChances(study, { level, leastHorses: minimumHorses });
  const [main] = rules;
  if (main === undefined) {
    const why = notes.length === 0 ? "no foot of known side was measured or traced." : notes.join(" ");
    const reason = `No rule can be made that tells front from hind: ${why}`;
    return { kind: "not_enough_data", id, question, reason };
  }
  const { errorRate, errors, n } = main.crossValidated;
  const wrong = howSure({ ...errorRate, estimate: errorRate.estimate ?? 0 });
  const doubtful = feet.filter((foot) => foot.from === "outline" && !foot.specimen && labelChance(foot) < DOUBTFUL);
  const specimens = feet.filter(({ specimen }) => specimen);
  const rule = main.from === "outline" ? tracedRule(study, main) : null;
  const by = main.from === "outline" ? "outline alone" : "width over length by caliper alone";
  return {
    kind: "answer",
    id,
    question,
    sentence: `Going by the ${by}, ${stageInWords(main.stage)}, front and hind were mistaken for each other in ${errors} of ${counted(n, main.from === "outline" ? "outline" : "reading")} of horses the rule had not seen: ${wrong}.${specimenWords(specimens)}${rule === null ? "" : doubtWords(doubtful.length)}`,
    tables: [errorsTable(rules, rule), ...specimenTable(specimens), ...doubtfulTable(doubtful)],
    charts: rule === null ? [] : [chartOf(rule, main.stage)],
    cautions: [
      "A foot that the rule doubts may be an odd foot as well as a wrong label: look at it before changing a record.",
      "The rule was made from horses of this study; of another breed, or of feet traced by another hand, it may be wrong more often.",
      ...(rules.some(({ from }) => from === "caliper")
        ? ["Width over length by caliper says less of a foot than its outline: trace one that matters."]
        : []),
    ],
    method: {
      unit: main.from === "outline" ? "an outline" : "a caliper reading",
      n,
      missing: leftOut(study, main),
      text: `Linear discriminants, each stage by itself: of traced outlines by width over length, toe over greatest width, place of the greatest width and circularity; of caliper readings by width over length. Each horse is judged by a rule made without it (${counted(main.horses, "horse")} in the first); both ends equally likely beforehand. ${logisticWords(rule)} Specimens make no part of a rule and are judged by that of their stage, or of most horses. Missing: ${main.from === "outline" ? "outlines" : "readings"} of feet of known side that cannot be used or are of another stage. Horses and ponies only.`,
      links: ["footEndChances", "frontOrHind", "describedOutlines", "linearDiscriminant", "crossValidatedLogistic"],
    },
  };
}

type Rule = FrontOrHind<OutlineDescription>;

function ofHorses(study: Study): (row: { readonly horseId: string }) => boolean {
  const species = new Map(study.horses.map((stay) => [stay.horseId, stay.species]));
  return ({ horseId }) => !["donkey", "mule"].includes(species.get(horseId) ?? "horse");
}

/** The rule of the outlines once more, with the logistic one beside it and what is drawn. */
function tracedRule(study: Study, { stage, terms }: FootEndRule): Rule {
  const { rows } = describedOutlines(tracedOutlines(study, { mirrorLeft: true }));
  const isHorse = ofHorses(study);
  return frontOrHind(
    rows.filter((row) => isHorse(row) && (row.side === null || row.stage === stage)),
    terms,
    { level: study.settings.level },
  );
}

function leftOut(study: Study, { from, n }: FootEndRule): number {
  const all =
    from === "outline"
      ? tracedOutlines(study)
      : study.visits.filter(({ hoofWidthMm, hoofLengthMm }) => (hoofWidthMm ?? hoofLengthMm) !== null);
  const isHorse = ofHorses(study);
  return all.filter((row) => footSide(row.foot) !== null && isHorse(row)).length - n;
}

function logisticWords(rule: Rule | null): string {
  if (rule === null) return "No outlines carry a rule here.";
  if (rule.logistic === null) return `Logistic regression of the outlines has no answer here: ${rule.logisticNote ?? ""}`;
  return "Logistic regression with the same measures of the outlines beside it.";
}

function chartOf(rule: Rule, stage: FootEndRule["stage"]): Chart {
  return toeShapeChart(
    [...rule.known, ...rule.specimens].map(({ foot: { horseId, foot, side, end, shapeIndex, toeTaper }, probabilityFore }) => {
      const kind = side === null ? "specimen" : end === "fore" ? "front" : "hind";
      return { name: `${horseId}, ${footInWords(foot)}`, kind, shapeIndex, toeTaper, probabilityFore };
    }),
    { taken: `${stageInWords(stage)}, one for each tracing` },
  );
}

function labelChance({ labelled, probabilityFore }: FootEndChance): number {
  return labelled === "fore" ? probabilityFore : 1 - probabilityFore;
}

/** Each specimen once, by its outline where it was traced. */
function specimenWords(specimens: readonly FootEndChance[]): string {
  const said = [...grouped(specimens, ({ horseId, visitDate, foot }) => [horseId, visitDate, foot].join("\n")).values()].flatMap(
    (of) =>
      of.slice(0, 1).map(({ horseId, from, probabilityFore }) => {
        const end = probabilityFore >= 0.5 ? "front" : "hind";
        const chance = percentage(Math.max(probabilityFore, 1 - probabilityFore));
        return `${horseId} ${end} (${chance}${from === "caliper" ? ", by caliper" : ""})`;
      }),
  );
  return said.length === 0 ? "" : ` Specimens: ${listed(said)}.`;
}

function doubtWords(doubtful: number): string {
  if (doubtful === 0) return " No label is spoken against by the outline.";
  return ` The shape speaks against the label of ${counted(doubtful, "outline")}.`;
}

function errorsTable(rules: readonly FootEndRule[], traced: Rule | null): Table {
  const row = (rule: string, stage: FootEndRule["stage"], { classes, confusion, n, errorRate }: ClassificationTable) => {
    const of = (truth: number, said: number) => confusion[truth]?.[said] ?? 0;
    // The discriminant calls its classes fore and hind, the logistic rule no and yes, yes being fore.
    const fore = Math.max(classes.indexOf("fore"), classes.indexOf("yes"));
    const { estimate, lower, upper } = errorRate;
    const counts = { foreAsHind: of(fore, 1 - fore), hindAsFore: of(1 - fore, fore), n };
    return { rule, stage: stageInWords(stage), ...counts, estimate, lower, upper };
  };
  const [main] = rules;
  const beside =
    main === undefined || traced === null
      ? []
      : [
          row("outlines, discriminant, on its own horses (too good)", main.stage, traced.discriminant.resubstitution),
          ...(traced.logistic === null
            ? []
            : [row("outlines, logistic, horses not seen", main.stage, traced.logistic.crossValidated)]),
        ];
  const seen = rules.map(({ from, stage, crossValidated }) =>
    row(`${from === "outline" ? "outlines" : "caliper"}, discriminant, horses not seen`, stage, crossValidated),
  );
  return {
    caption: "How often each rule is wrong",
    columns: [
      { name: "rule", title: "Rule" },
      { name: "stage", title: "Taken" },
      { name: "foreAsHind", title: "Front taken for hind" },
      { name: "hindAsFore", title: "Hind taken for front" },
      { name: "n", title: "Outlines or readings" },
      { name: "estimate", title: "Wrong", percent: true },
      { name: "lower", title: "From", percent: true },
      { name: "upper", title: "To", percent: true },
    ],
    rows: [...seen.slice(0, 1), ...beside, ...seen.slice(1)],
  };
}

const chance = [
  { name: "day", title: "Seen" },
  { name: "labelled", title: "Labelled" },
  { name: "by", title: "By" },
  { name: "probabilityFore", title: "Chance of a front foot", percent: true },
];

function judgedRow({ horseId, visitDate, foot, from, probabilityFore }: FootEndChance) {
  return { horseId, day: shortDate(visitDate), labelled: footInWords(foot), by: from, probabilityFore };
}

function specimenTable(specimens: readonly FootEndChance[]): Table[] {
  if (specimens.length === 0) return [];
  const columns = [{ name: "horseId", title: "Specimen" }, ...chance];
  return [{ caption: "Specimens, by their shape", columns, rows: specimens.map(judgedRow) }];
}

function doubtfulTable(doubtful: readonly FootEndChance[]): Table[] {
  if (doubtful.length === 0) return [];
  const columns = [{ name: "horseId", title: "Horse" }, ...chance];
  return [{ caption: "Labels the shape speaks against", columns, rows: doubtful.map(judgedRow) }];
}
