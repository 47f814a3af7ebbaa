import type { Table } from "../chart/Table.js";
import { asOfDate } from "../derive/asOfDate.js";
import { type FootShape, footShapes } from "../derive/footShapes.js";
import { footSide } from "../derive/footSide.js";
import { heldToThreshold } from "../derive/heldToThreshold.js";
import type { ShapeFlag } from "../derive/ShapeFlag.js";
import { shapeThresholds } from "../derive/shapeThresholds.js";
import { type UnevenPair, unevenPairs } from "../derive/unevenPairs.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { definitionsTable } from "./definitionsTable.js";
import { footInWords } from "./words/footInWords.js";
import { shortDate } from "./words/shortDate.js";
import { stageInWords } from "./words/stageInWords.js";

const { id, question } = asked("shape-past-threshold");
const names: Readonly<Record<ShapeFlag["flag"], string>> = {
  contracted: "narrow frog (contracted)",
  underrun: "low heel (underrun)",
  uneven: "uneven pair",
};

/** One value that was held to a threshold. */
interface Held {
  readonly horseId: string;
  readonly what: string;
  readonly visitDate: string;
  readonly stage: FootShape["stage"];
  readonly flag: ShapeFlag;
}

/** Flags of the last time each foot and pair was measured, with source and threshold, and what other published thresholds would say. */
export function shapePastThreshold(study: Study): Answer | NotEnoughData {
  const asOf = asOfDate(study);
  const known = (row: { readonly visitDate: string }) => asOf === null || row.visitDate <= asOf;
  const held = [...feet(footShapes(study).filter(known)), ...pairs(unevenPairs(study).filter(known))];
  if (held.length === 0) {
    const reason = "No foot of a horse or pony has the measures that a flag needs: frog width and length, or toe and heel angle.";
    return { kind: "not_enough_data", id, question, reason };
  }
  const raised = held.filter(({ flag }) => flag.raised);
  const count = (flag: ShapeFlag["flag"]) => {
    const of = held.filter((each) => each.flag.flag === flag);
    return of.length === 0 ? [] : [`${of.filter((each) => each.flag.raised).length} of ${of.length} ${nouns[flag]}`];
  };
  return {
    kind: "answer",
    id,
    question,
    sentence: `Measured last, past the thresholds set for this study were ${[...count("contracted"), ...count("underrun"), ...count("uneven")].join(", ")}. Authors draw these lines elsewhere: see what the other thresholds would say.`,
    tables: [thresholdTable(held), raisedTable(raised), definitionsTable(["frogIndex", "toeHeelGapDeg", "toeAngleDeg"])],
    charts: [],
    cautions: [
      "A flag sorts records. It is no diagnosis and says nothing of what should be done to the foot.",
      "Thresholds are settings, and published ones conflict; set the one your own work holds to, and keep it.",
      "Horses and ponies only: the thresholds were made for their feet.",
    ],
    method: {
      unit: "a foot, or a pair of feet, when it was measured last",
      n: held.length,
      missing: unmeasured(study, held),
      text: "Each foot and pair at the last visit with the measures, at the later stage of that day; before and after a trim are never put together. Missing: feet on record without the measures of any flag. Frog index: frog width over length. Toe-heel gap: toe angle less heel angle. Uneven pair: size of left less right toe angle at one stage of one day.",
      links: ["shapeFlags", "shapeThresholds", "unevenPairs", "hoofShape"],
    },
  };
}

function unmeasured({ visits }: Study, held: readonly Held[]): number {
  const measured = new Set(held.map(({ horseId, what }) => `${horseId}\n${what}`));
  const feet = new Set(
    visits.filter(({ foot }) => footSide(foot) !== null).map(({ horseId, foot }) => `${horseId}\n${footInWords(foot)}`),
  );
  return [...feet].filter((foot) => !measured.has(foot)).length;
}

const nouns: Readonly<Record<ShapeFlag["flag"], string>> = {
  contracted: "feet for a narrow frog",
  underrun: "feet for a low heel",
  uneven: "pairs for an uneven toe angle",
};

/** The later stage of the last day. */
function last<Row extends { readonly visitDate: string; readonly stage: FootShape["stage"] }>(rows: readonly Row[]): Row[] {
  const rank = ({ visitDate, stage }: Row) => `${visitDate} ${stage === "after_trim" ? 1 : 0}`;
  const latest = rows.reduce<Row | null>((best, row) => (best === null || rank(row) >= rank(best) ? row : best), null);
  return latest === null ? [] : [latest];
}

function feet(rows: readonly FootShape[]): Held[] {
  const sided = rows.filter(({ side }) => side !== null);
  return [...grouped(sided, ({ horseId, foot }) => `${horseId}\n${foot}`).values()].flatMap((history) =>
    (["contracted", "underrun"] as const).flatMap((name) => {
      const with1 = history.filter(({ flags }) => flags.some(({ flag }) => flag === name));
      return last(with1).flatMap(({ horseId, foot, visitDate, stage, flags }) =>
        flags.filter(({ flag }) => flag === name).map((flag) => ({ horseId, what: footInWords(foot), visitDate, stage, flag })),
      );
    }),
  );
}

function pairs(rows: readonly UnevenPair[]): Held[] {
  const measured = rows.filter(({ flag }) => flag !== null);
  return [...grouped(measured, ({ horseId, end }) => `${horseId}\n${end}`).values()].flatMap((history) =>
    last(history).flatMap(({ horseId, end, visitDate, stage, flag }) =>
      flag === null ? [] : [{ horseId, what: end === "fore" ? "fore pair" : "hind pair", visitDate, stage, flag }],
    ),
  );
}

function thresholdTable(held: readonly Held[]): Table {
  const rows = (["contracted", "underrun", "uneven"] as const).flatMap((name) => {
    const of = held.filter(({ flag }) => flag.flag === name);
    const { measure, rule, published } = shapeThresholds[name];
    const past = (threshold: number) => of.filter(({ flag }) => heldToThreshold(name, flag.value, threshold).raised).length;
    const own = of[0]?.flag;
    const set =
      own === undefined || published.some(({ threshold }) => threshold === own.threshold)
        ? published
        : [{ threshold: own.threshold, source: own.source }, ...published];
    return set.map(({ threshold, source }) => ({
      ...{ flag: names[name], rule: `${measure}: ${rule}`, threshold, source },
      used: threshold === own?.threshold ? "set for this study" : "",
      ...{ past: past(threshold), of: of.length },
    }));
  });
  return {
    caption: "Published thresholds, and how many feet or pairs each would flag",
    columns: [
      { name: "flag", title: "Flag" },
      { name: "rule", title: "Raised when" },
      { name: "threshold", title: "Threshold" },
      { name: "source", title: "Source" },
      { name: "used", title: "In use" },
      { name: "past", title: "Past it" },
      { name: "of", title: "Of" },
    ],
    rows,
  };
}

function raisedTable(raised: readonly Held[]): Table {
  const rows = [...raised].sort((a, b) => (`${a.horseId}\n${a.what}` < `${b.horseId}\n${b.what}` ? -1 : 1));
  return {
    caption: "Past the threshold when measured last",
    columns: [
      { name: "horseId", title: "Horse" },
      { name: "what", title: "Foot or pair" },
      { name: "flag", title: "Flag" },
      { name: "value", title: "Value", digits: 2 },
      { name: "threshold", title: "Threshold" },
      { name: "source", title: "Source of the threshold" },
      { name: "measured", title: "Measured" },
    ],
    rows: rows.map(({ horseId, what, visitDate, stage, flag }) => ({
      ...{ horseId, what, flag: names[flag.flag], value: flag.value },
      ...{ threshold: `${flag.rule} ${flag.threshold}`, source: flag.source },
      measured: `${shortDate(visitDate)}, ${stageInWords(stage)}`,
    })),
  };
}
