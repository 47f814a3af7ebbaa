import { shapeAndSizeChart } from "../chart/shapeAndSizeChart.js";
import type { Table } from "../chart/Table.js";
import { ageClass } from "../derive/ageClass.js";
import { mostUsedStage } from "../derive/mostUsedStage.js";
import { shapeDefinitions } from "../derive/shapeDefinitions.js";
import type { ShapeMeasure } from "../derive/ShapeMeasure.js";
import { type SizedFoot, sizedFeet } from "../derive/sizedFeet.js";
import { stayAt } from "../derive/stayAt.js";
import { tracedOutlines } from "../derive/tracedOutlines.js";
import { type ContrastAtOneSize, contrastAtOneSize, type SizedValue } from "../estimate/contrastAtOneSize.js";
import { describedOutlines, type OutlineDescription } from "../estimate/describedOutlines.js";
import type { Interval } from "../estimate/Interval.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { capital } from "../chart/parts/capital.js";
import { definitionsTable } from "./definitionsTable.js";
import { counted } from "./words/counted.js";
import { footInWords } from "./words/footInWords.js";
import { rounded } from "./words/rounded.js";
import { signed } from "./words/signed.js";
import { stageInWords } from "./words/stageInWords.js";
import { withInterval } from "./words/withInterval.js";

const { id, question } = asked("shape-and-size");
const measures: readonly ShapeMeasure[] = [
  ...(["shapeIndex", "frogIndex", "toeHeelRatio"] as const),
  ...(["toeAngleDeg", "toeHeelGapDeg", "wallAngleDifferenceDeg"] as const),
];
const traced = [
  ["toeTaper", "Traced: width near the toe over greatest width"],
  ["widestFromToe", "Traced: widest place from the toe, share of the length"],
  ["circularity", "Traced: circularity"],
] as const;

interface Contrast {
  readonly title: string;
  readonly digits: number;
  readonly of: ContrastAtOneSize;
}

/** Fore less hind in measures of shape with horse and size held equal, beside the same with size left as it is. Unit: a foot, horses as groups. */
export function shapeAndSize(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses } = study.settings;
  const grown = grownOnly(study);
  const all = sizedFeet(grown, measures);
  const stage = mostUsedStage(all.filter(({ sizeMm, values }) => sizeMm !== null && values.shapeIndex !== undefined));
  const feet = all.filter((foot) => foot.stage === stage);
  const rows = rowsOf(feet, "shapeIndex");
  const horses = horsesWithBoth(rows);
  if (horses < minimumHorses) {
    const reason = `${capital(counted(horses, "grown horse has", "grown horses have"))} width and length of both front and hind feet at one stage; fewer than ${minimumHorses} give no comparison.`;
    return { kind: "not_enough_data", id, question, reason };
  }
  const index = contrastAtOneSize(rows, { level });
  if (index.atOneSize.estimate === null) {
    const reason = `Size cannot be allowed for: ${index.atOneSize.note ?? ""}`;
    return { kind: "not_enough_data", id, question, reason };
  }
  const contrasts = [
    ...measures.flatMap((measure): Contrast[] => {
      const { title, digits } = shapeDefinitions[measure];
      return found(title, digits + 1, rowsOf(feet, measure), { level, minimumHorses });
    }),
    ...tracedContrasts(grown, { level, minimumHorses }),
  ];
  const taken = `${stageInWords(stage)}, mean over visits`;
  const ofAll = new Set(all.map(({ footId }) => footId)).size;
  return {
    kind: "answer",
    id,
    question,
    sentence: `${told(index, horses)} ${besides(index)}`,
    tables: [sizeTable(contrasts), otherwiseTable(contrasts), definitionsTable(["hoofWidthMm", "hoofLengthMm", ...measures])],
    charts: [
      shapeAndSizeChart(
        feet.flatMap(({ horseId, foot, end, sizeMm, values: { shapeIndex } }) =>
          sizeMm === null || shapeIndex === undefined
            ? []
            : [{ horseId, foot: footInWords(foot), end: wordOf(end), size: sizeMm, value: shapeIndex }],
        ),
        index.lines.map(({ end, places }) => ({ end: wordOf(end), places })),
        {
          ...{ title: "Width over length of front and hind feet, by size", measure: "Width / length", digits: 2, taken },
          size: "Size: root of width × length, mm",
          finding: `At one size front less hind is ${withInterval({ ...index.atOneSize, estimate: index.atOneSize.estimate }, (value) => signed(value, 3))}.`,
        },
      ),
    ],
    cautions: cautionsOf(index),
    method: {
      unit: "a foot, horses as groups",
      n: index.feet,
      missing: ofAll - index.feet,
      text: `Measures ${taken}, one value a foot. Linear mixed model of each measure on the end and the logarithm of size, horses as groups (restricted maximum likelihood, limits by t); size is the root of width times length. Beside it, Student's t over horses with size left as it is, and least squares of differences within horses on those of size. Traced measures: outlines at their own most used stage, size the root of the area. Width over length was asked first; the others are looked at beside it, without correction for their number. Grown horses and ponies only.${index.notes.map((note) => ` ${note}`).join("")}`,
      links: ["contrastAtOneSize", "sizedFeet", "fitMixedLinear", "describedOutlines", "shapeDefinitions"],
    },
  };
}

/** Foals, yearlings, donkeys and mules have feet of their own kind. */
function grownOnly(study: Study): Study {
  const stays = grouped(study.horses, ({ horseId }) => horseId);
  const grown = ({ horseId, visitDate }: { readonly horseId: string; readonly visitDate: string }) => {
    const stay = stayAt(stays.get(horseId) ?? [], horseId, visitDate);
    const age = ageClass(stay?.birthYear ?? null, visitDate);
    return !["donkey", "mule"].includes(stay?.species ?? "horse") && age !== "foal" && age !== "yearling";
  };
  return { ...study, visits: study.visits.filter(grown), outlines: study.outlines.filter(grown) };
}

function rowsOf(feet: readonly SizedFoot[], measure: ShapeMeasure): SizedValue[] {
  return feet.map(({ horseId, end, sizeMm, values }) => ({ horseId, end, size: sizeMm, value: values[measure] ?? null }));
}

function horsesWithBoth(rows: readonly SizedValue[]): number {
  const known = rows.filter(({ size, value }) => size !== null && value !== null);
  return [...grouped(known, ({ horseId }) => horseId).values()].filter((own) => new Set(own.map(({ end }) => end)).size === 2)
    .length;
}

function found(
  title: string,
  digits: number,
  rows: readonly SizedValue[],
  { level, minimumHorses }: { readonly level: number; readonly minimumHorses: number },
): Contrast[] {
  return horsesWithBoth(rows) < minimumHorses ? [] : [{ title, digits, of: contrastAtOneSize(rows, { level }) }];
}

function tracedContrasts(study: Study, options: { readonly level: number; readonly minimumHorses: number }): Contrast[] {
  const { rows } = describedOutlines(tracedOutlines(study, { mirrorLeft: true }));
  const sided = rows.flatMap((row) => (row.side === null || row.end === null ? [] : [{ ...row, end: row.end }]));
  const stage = mostUsedStage(sided);
  const feet = grouped(
    sided.filter((row) => row.stage === stage),
    ({ footId }) => footId,
  );
  const mean = (own: readonly OutlineDescription[], of: (row: OutlineDescription) => number) =>
    own.reduce((sum, row) => sum + of(row), 0) / own.length;
  return traced.flatMap(([measure, title]) => {
    const values = [...feet.values()].flatMap((own) =>
      own.slice(0, 1).map(({ horseId, end }): SizedValue => {
        const size = Math.exp(mean(own, ({ areaCm2 }) => Math.log(areaCm2) / 2));
        return { horseId, end, size, value: mean(own, (row) => row[measure]) };
      }),
    );
    return found(title, 3, values, options);
  });
}

function told({ atOneSize }: ContrastAtOneSize, horses: number): string {
  const { estimate, lower, upper, level } = atOneSize;
  const of = `In ${counted(horses, "grown horse")}, horse and size allowed for,`;
  if (estimate === null || lower === null || upper === null || (lower <= 0 && upper >= 0)) {
    const range = withInterval({ estimate: estimate ?? 0, lower, upper, level }, (value) => signed(value, 3));
    return `${of} front and hind feet could not be told apart by width over length: front less hind ${range}.`;
  }
  const [least, most] = estimate > 0 ? [lower, upper] : [-upper, -lower];
  const by = withInterval({ estimate: Math.abs(estimate), lower: least, upper: most, level }, (value) => rounded(value, 3));
  return `${of} front feet were ${estimate > 0 ? "wider" : "narrower"} for their length than hind feet by ${by}.`;
}

function besides({ asMeasured, foreLarger, perTenPercent }: ContrastAtOneSize): string {
  const larger = foreLarger.estimate ?? 0;
  const size = `${rounded(100 * Math.abs(larger), 1)}% ${larger < 0 ? "smaller" : "larger"}`;
  return `With size left as it is, front less hind was ${signed(asMeasured.estimate ?? 0, 3)}, front feet being ${size}; a foot 10% larger went with ${signed(perTenPercent.estimate ?? 0, 3)}.`;
}

function cautionsOf({ atOneSize, withinHorses }: ContrastAtOneSize): string[] {
  const { estimate, lower, upper } = withinHorses;
  const value = atOneSize.estimate ?? 0;
  const apart = estimate !== null && lower !== null && upper !== null && (value < lower || value > upper);
  return [
    "Size is held equal by a line: where front and hind feet hardly overlap in size, the answer leans on it.",
    ...(apart
      ? [
          `From differences within horses alone the difference at one size is ${signed(estimate, 3)} (${signed(lower, 3)} to ${signed(upper, 3)}), and the model lies outside that: a wide foot is both larger and wider for its length, which ties the two within a horse, or size goes otherwise with shape within horses than between them. The truth may lie between the two answers.`,
        ]
      : []),
    "A difference that holds at one size says how feet are, not what made them so, nor what a foot should be.",
  ];
}

function numbers(of: Pick<Interval, "estimate" | "lower" | "upper">, digits: number, name: string) {
  const text = (value: number | null) => (value === null ? null : rounded(value, digits));
  return { [name]: text(of.estimate), [`${name}From`]: text(of.lower), [`${name}To`]: text(of.upper) };
}

function tableOf(
  caption: string,
  contrasts: readonly Contrast[],
  parts: readonly { readonly name: string; readonly title: string; readonly of: (contrast: ContrastAtOneSize) => Interval }[],
): Table {
  return {
    caption,
    columns: [
      { name: "title", title: "Measure" },
      { name: "horses", title: "Horses" },
      { name: "feet", title: "Feet" },
      ...parts.flatMap(({ name, title }) => [
        { name, title },
        { name: `${name}From`, title: "From" },
        { name: `${name}To`, title: "To" },
      ]),
    ],
    rows: contrasts.map(({ title, digits, of: contrast }) => ({
      ...{ title, horses: contrast.horses, feet: contrast.feet },
      ...parts.reduce((cells, { name, of }) => ({ ...cells, ...numbers(of(contrast), digits, name) }), {}),
    })),
  };
}

function sizeTable(contrasts: readonly Contrast[]): Table {
  return tableOf("Front less hind, horse and size allowed for", contrasts, [
    { name: "atOneSize", title: "Front less hind at one size", of: ({ atOneSize }) => atOneSize },
    { name: "larger", title: "A foot 10% larger", of: ({ perTenPercent }) => perTenPercent },
  ]);
}

function otherwiseTable(contrasts: readonly Contrast[]): Table {
  return tableOf("The same otherwise reckoned", contrasts, [
    { name: "asMeasured", title: "Size left as it is", of: ({ asMeasured }) => asMeasured },
    { name: "within", title: "At one size, from differences within horses alone", of: ({ withinHorses }) => withinHorses },
  ]);
}

function wordOf(end: "fore" | "hind"): "front" | "hind" {
  return end === "fore" ? "front" : "hind";
}
