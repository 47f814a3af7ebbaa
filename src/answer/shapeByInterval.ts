import type { Table } from "../chart/Table.js";
import { type GapFinding, gapFindings } from "../derive/gapFindings.js";
import { clusteredProportion } from "../estimate/clusteredProportion.js";
import { EstimateError } from "../estimate/EstimateError.js";
import { fitLogistic } from "../estimate/fitLogistic.js";
import { meanInterval } from "../estimate/meanInterval.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { counted } from "./words/counted.js";
import { listed } from "./words/listed.js";
import { percentage } from "./words/percentage.js";
import { levelText } from "../chart/parts/levelText.js";

const { id, question } = asked("shape-by-interval");
const findings = [
  ["flare", "flare"],
  ["crack", "crack"],
  ["barsOvergrown", "overgrown or folded bars"],
  ["whiteLineOpen", "stretched or separated white line"],
] as const;
/** Weeks between two times a foot was worked on; the last band has no end. */
const bands = [
  { from: 0, to: 42, words: "up to 6 weeks" },
  { from: 43, to: 56, words: "7 or 8 weeks" },
  { from: 57, to: Infinity, words: "more than 8 weeks" },
] as const;
type Shoeing = "shod" | "bare";

interface Odds {
  readonly shoeing: Shoeing;
  readonly finding: string;
  readonly n: number;
  readonly horses: number;
  readonly estimate: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly note: string;
}

/** Flares, cracks, bars, white line and toe gain beside the days since the foot was last worked on, shod and bare apart. Unit: a foot at a visit. */
export function shapeByInterval(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses } = study.settings;
  const rows = gapFindings(study);
  const known = rows.filter(({ shoeing }) => shoeing !== null);
  const horses = new Set(known.map(({ horseId }) => horseId)).size;
  if (horses < minimumHorses) {
    const reason = `The days since the last trim and the state of the wall are known together for ${counted(horses, "horse")}; fewer than ${minimumHorses} give no comparison.`;
    return { kind: "not_enough_data", id, question, reason };
  }
  const kinds = (["shod", "bare"] as const).filter((shoeing) => known.some((row) => row.shoeing === shoeing));
  const odds = kinds.flatMap((shoeing) => findings.map((finding) => oddsOf(known, shoeing, finding, level)));
  const clear = odds.filter(({ lower }) => (lower ?? 0) > 1);
  const said = kinds.flatMap((shoeing) => {
    const own = clear.filter((each) => each.shoeing === shoeing);
    if (own.length === 0) return [];
    return [
      `in feet going ${shoeing} of ${listed(own.map(({ finding, estimate }) => `${finding} (${(estimate ?? 1).toFixed(2)} times)`))}`,
    ];
  });
  return {
    kind: "answer",
    id,
    question,
    sentence: `${said.length === 0 ? "No finding went clearly with longer gaps, shod or bare" : `With each week more since the last trim went higher odds, ${said.join("; ")}`}: ${counted(known.length, "look", "looks")} at feet of ${counted(horses, "horse")}.`,
    tables: [oddsTable(odds), ...kinds.map((shoeing) => bandTable(known, shoeing, level, minimumHorses))],
    charts: [],
    cautions: [
      "This is no advice to change an interval. It went with the gap; it was not shown to come from it.",
      "Good feet may be given longer gaps and bad ones shorter, and horses that were late were late for a reason: that alone can make or hide a difference.",
      "Shod and bare feet are never put together: a bare foot wears.",
    ],
    method: {
      unit: "a foot at a visit",
      n: known.length,
      missing: rows.length - known.length,
      text: `Days since the foot was last trimmed, shod or reset; findings before the work of the day. Logistic regression of each finding on weeks, errors that allow for horses as clusters, ${levelText(level)} limits; findings stand side by side without correction for their number. Shares by band: logit intervals with horses as clusters; gain of the toe: mean of horses, Student's t. Missing: looks at feet of unknown shoeing; looks after a visit that does not say what was done have no gap.`,
      links: ["gapFindings", "fitLogistic", "clusteredProportion", "meanInterval"],
    },
  };
}

function oddsOf(all: readonly GapFinding[], shoeing: Shoeing, [column, finding]: (typeof findings)[number], level: number): Odds {
  const rows = all
    .filter((row) => row.shoeing === shoeing && row[column] !== null)
    .map((row) => ({ found: row[column], horseId: row.horseId, weeks: row.gapDays / 7 }));
  const base = { shoeing, finding, n: rows.length, horses: new Set(rows.map(({ horseId }) => horseId)).size };
  try {
    const { coefficients } = fitLogistic({ rows, outcome: "found", terms: ["weeks"], cluster: "horseId", level });
    const weeks = coefficients[1];
    if (weeks === undefined) return { ...base, estimate: null, lower: null, upper: null, note: "no model" };
    const [estimate, lower, upper] = [weeks.estimate, weeks.lower, weeks.upper].map(Math.exp);
    return { ...base, estimate: estimate ?? null, lower: lower ?? null, upper: upper ?? null, note: "" };
  } catch (fault) {
    if (!(fault instanceof EstimateError)) throw fault;
    return { ...base, estimate: null, lower: null, upper: null, note: fault.message };
  }
}

function oddsTable(odds: readonly Odds[]): Table {
  return {
    caption: "Odds of a finding for each week more since the last trim",
    columns: [
      { name: "shoeing", title: "Feet" },
      { name: "finding", title: "Finding" },
      { name: "n", title: "Looks" },
      { name: "horses", title: "Horses" },
      { name: "estimate", title: "Odds ratio a week", digits: 2 },
      { name: "lower", title: "From", digits: 2 },
      { name: "upper", title: "To", digits: 2 },
      { name: "note", title: "Note", below: "long" },
    ],
    rows: odds.map((each) => ({ ...each })),
  };
}

function bandTable(all: readonly GapFinding[], shoeing: Shoeing, level: number, minimumHorses: number): Table {
  const own = all.filter((row) => row.shoeing === shoeing);
  const rows = bands.flatMap(({ from, to, words }) => {
    const within = own.filter(({ gapDays }) => gapDays >= from && gapDays <= to);
    if (within.length === 0) return [];
    const share = (column: (typeof findings)[number][0]) => shareOf(within, column, level);
    const gain = gainOf(within, level);
    const horses = new Set(within.map(({ horseId }) => horseId)).size;
    const shares = {
      flare: share("flare"),
      crack: share("crack"),
      bars: share("barsOvergrown"),
      whiteLine: share("whiteLineOpen"),
    };
    return [{ gap: words, looks: within.length, horses, ...shares, gain }];
  });
  return {
    caption: `Feet going ${shoeing}, by the gap since the last trim (${levelText(level)} intervals)`,
    columns: [
      { name: "gap", title: "Gap" },
      { name: "looks", title: "Looks" },
      { name: "horses", title: "Horses" },
      { name: "flare", title: "Flare" },
      { name: "crack", title: "Crack" },
      { name: "bars", title: "Overgrown or folded bars" },
      { name: "whiteLine", title: "Open white line" },
      { name: "gain", title: "Gain of the toe, mm" },
    ],
    rows,
    greyed: rows.flatMap(({ horses }, row) =>
      horses < minimumHorses ? [{ row, reason: `fewer than ${minimumHorses} horses` }] : [],
    ),
  };
}

function shareOf(rows: readonly GapFinding[], column: (typeof findings)[number][0], level: number): string | null {
  const known = rows.filter((row) => row[column] !== null);
  if (known.length === 0) return null;
  const clusters = [...grouped(known, ({ horseId }) => horseId).values()].map((of) => ({
    cases: of.filter((row) => row[column]).length,
    n: of.length,
  }));
  const { estimate, logitT } = clusteredProportion(clusters, { level });
  if (logitT.lower === null || logitT.upper === null) return percentage(estimate);
  return `${percentage(estimate)} (${percentage(logitT.lower)} to ${percentage(logitT.upper)})`;
}

function gainOf(rows: readonly GapFinding[], level: number): string | null {
  const horses = [...grouped(rows, ({ horseId }) => horseId).values()].flatMap((of) => {
    const gains = of.flatMap(({ toeGainMm }) => toeGainMm ?? []);
    return gains.length === 0 ? [] : [gains.reduce((sum, value) => sum + value, 0) / gains.length];
  });
  if (horses.length === 0) return null;
  const { estimate, lower, upper } = meanInterval(horses, { level });
  const number = (value: number | null) => (value ?? 0).toFixed(1);
  return lower === null ? number(estimate) : `${number(estimate)} (${number(lower)} to ${number(upper)})`;
}
