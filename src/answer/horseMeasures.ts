import { cellText } from "../chart/cellText.js";
import { shapeDefinitions } from "../derive/shapeDefinitions.js";
import type { ShapeMeasure } from "../derive/ShapeMeasure.js";
import type { ShapeMeasureRow } from "../derive/ShapeMeasureRow.js";
import { shapeMeasures } from "../derive/shapeMeasures.js";
import type { Foot } from "../study/Foot.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { counted } from "./words/counted.js";
import { footInWords } from "./words/footInWords.js";
import { longDate } from "./words/longDate.js";
import { stageInWords } from "./words/stageInWords.js";

const id = "horse-measures";
const question = "What did the feet measure?";
const feet: readonly Foot[] = ["LF", "RF", "LH", "RH"];
const measures: readonly ShapeMeasure[] = [
  "toeLengthMm",
  "heelHeightMm",
  "toeAngleDeg",
  "heelAngleDeg",
  "hoofWidthMm",
  "hoofLengthMm",
  "frogWidthMm",
  "frogLengthMm",
];

/**
 * The latest measures of the feet of one horse beside the first ones at the same stage, of a study cut to that horse. Where a day has measures at
 * more than one stage, the stage with most. Unit: a foot.
 */
export function horseMeasures(study: Study): Answer | NotEnoughData {
  const rows = shapeMeasures(study, measures).filter(({ side }) => side !== null);
  const day = rows.at(-1)?.visitDate;
  if (day === undefined)
    return { kind: "not_enough_data", id, question, reason: "No measure of a foot of this horse has been recorded." };
  const stages = [
    ...grouped(
      rows.filter(({ visitDate }) => visitDate === day),
      ({ stage }) => stage,
    ),
  ];
  const stage = stages.reduce((most, each) => (each[1].length > most[1].length ? each : most))[0];
  const own = rows.filter((row) => row.stage === stage);
  const last = own.filter(({ visitDate }) => visitDate === day);
  const firstDay = own[0]?.visitDate ?? day;
  const first = firstDay === day ? [] : own.filter(({ visitDate }) => visitDate === firstDay);
  const measured = new Set(last.map(({ foot }) => foot)).size;
  const before = first.length === 0 ? "" : ` In brackets: the first at that stage, ${longDate(firstDay)}.`;
  return {
    kind: "answer",
    id,
    question,
    sentence: `Latest measures: ${counted(measured, "foot", "feet")}, ${longDate(day)}, ${stageInWords(stage)}.${before}`,
    tables: [tableOf(last, first, `Measures of ${longDate(day)}`)],
    charts: [],
    cautions: ["Two readings of one foot differ also by who measured and how."],
    method: {
      unit: "a foot",
      n: measured,
      missing: feet.length - measured,
      text: "Readings as recorded; of two on one day the first in the file. Stages before and after trimming are never set side by side.",
      links: ["shapeMeasures", "shapeDefinitions"],
    },
  };
}

function tableOf(last: readonly ShapeMeasureRow[], first: readonly ShapeMeasureRow[], caption: string): Answer["tables"][number] {
  const reading = (rows: readonly ShapeMeasureRow[], foot: Foot, measure: ShapeMeasure) => {
    const value = rows.find((row) => row.foot === foot && row.measure === measure)?.value;
    return value === undefined ? null : cellText(value, {});
  };
  const taken = measures.filter((measure) => last.some((row) => row.measure === measure));
  return {
    caption,
    columns: [{ name: "foot", title: "Foot" }, ...taken.map((measure) => ({ name: measure, title: titleOf(measure) }))],
    rows: feet.map((foot) => ({
      foot: footInWords(foot),
      ...Object.fromEntries(taken.map((measure) => [measure, cell(reading(last, foot, measure), reading(first, foot, measure))])),
    })),
  };
}

function cell(now: string | null, then: string | null): string | null {
  return then === null ? now : `${now ?? "–"} (${then})`;
}

function titleOf(measure: ShapeMeasure): string {
  const { title, unit } = shapeDefinitions[measure];
  return `${title}, ${unit === "deg" ? "degrees" : "mm"}`;
}
