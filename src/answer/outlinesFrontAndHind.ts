import { meanOutlinesChart } from "../chart/meanOutlinesChart.js";
import type { TracedOutline } from "../derive/TracedOutline.js";
import { mostUsedStage } from "../derive/mostUsedStage.js";
import { tracedOutlines } from "../derive/tracedOutlines.js";
import { describedOutlines, type OutlineDescription } from "../estimate/describedOutlines.js";
import { meanInterval } from "../estimate/meanInterval.js";
import { meanOutlines } from "../estimate/meanOutlines.js";
import { seededRandom } from "../estimate/numeric/seededRandom.js";
import { resampledOutline } from "../estimate/resampledOutline.js";
import { shapeDifference } from "../estimate/shapeDifference.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { capital } from "../chart/parts/capital.js";
import { counted } from "./words/counted.js";
import { stageInWords } from "./words/stageInWords.js";

const { id, question } = asked("outlines-front-and-hind");
const POINTS = 60;
const measures = [
  ["shapeIndex", "Width over length", 3],
  ["toeTaper", "Width near the toe over greatest width", 3],
  ["widestFromToe", "Widest place from the toe, share of the length", 3],
  ["circularity", "Circularity", 3],
  ["areaCm2", "Area within the wall, cm²", 1],
  ["frogToSole", "Frog area over area within the wall", 3],
] as const;

/** Mean outlines of both ends, and the difference within horses. Unit: a horse. */
export function outlinesFrontAndHind(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses } = study.settings;
  const species = new Map(study.horses.map((stay) => [stay.horseId, stay.species]));
  const usable = tracedOutlines(study, { mirrorLeft: true }).filter(
    ({ usable: sound, side, horseId }) => sound && side !== null && !["donkey", "mule"].includes(species.get(horseId) ?? "horse"),
  );
  const stage = mostUsedStage(usable);
  const taken = usable.filter((outline) => outline.stage === stage);
  const { rows, leftOut } = describedOutlines(taken);
  const refused = new Set(leftOut.map(({ horseId, visitDate, foot }) => [horseId, visitDate, foot].join("\n")));
  const sound = taken.filter(({ horseId, visitDate, foot }) => !refused.has([horseId, visitDate, foot].join("\n")));
  const pairs = pairsOf(sound);
  const horses = new Set(pairs.map(({ cluster }) => cluster)).size;
  if (horses < minimumHorses) {
    const reason = `${capital(counted(horses, "horse has", "horses have"))} a front and a hind foot of one side traced on one day at one stage; fewer than ${minimumHorses} give no comparison.`;
    return { kind: "not_enough_data", id, question, reason };
  }
  const tested = shapeDifference(pairs, { random: seededRandom("front and hind outlines") });
  const contrasts = measures.map(([measure, title, digits]) => ({ title, digits, ...contrast(rows, measure, level) }));
  const taper = contrast(rows, "toeTaper", level);
  return {
    kind: "answer",
    id,
    question,
    sentence: `In ${counted(horses, "horse")} the outline of front feet ${tested.p < 1 - level ? "differed from" : "could not be told from"} that of hind feet (permutation test within horses, p ${tested.p < 0.001 ? "below 0.001" : `= ${tested.p.toFixed(3)}`}); near the toe front feet were ${words(taper, 3)} of their greatest width broader.`,
    tables: [
      {
        caption: "Front less hind, within horses",
        columns: [
          { name: "title", title: "Measure" },
          { name: "horses", title: "Horses" },
          { name: "estimate", title: "Front less hind", digits: 3 },
          { name: "lower", title: "From", digits: 3 },
          { name: "upper", title: "To", digits: 3 },
        ],
        rows: contrasts.map(({ title, estimate, lower, upper, n }) => ({ title, horses: n, estimate, lower, upper })),
      },
    ],
    charts: [
      meanOutlinesChart(meanOutlines(sound), {
        taken: `${capital(stageInWords(stage))}; band: two standard deviations between horses`,
      }),
    ],
    cautions: [
      "An outline of the ground surface depends on the trim and on the hand that traced it; stages are never put together.",
      "Shapes are compared at one size: a larger foot is not a different shape.",
    ],
    method: {
      unit: "a horse",
      n: horses,
      missing: usable.length - sound.length,
      text: `Outlines ${stageInWords(stage)}, left feet mirrored, ${POINTS} points from the toe, superimposed by Procrustes; front and hind of one side and day make a pair, swapped at random within horses, ${counted(tested.permutations, "time")}. Single measures: mean of each end, front less hind within each horse, mean over horses with Student's t limits. Outlines of another stage, and ones that cannot be used, are left out and counted as missing. Horses and ponies only.`,
      links: ["shapeDifference", "meanOutlines", "describedOutlines", "meanInterval"],
    },
  };
}

function words(
  { estimate, lower, upper }: { readonly estimate: number | null; readonly lower: number | null; readonly upper: number | null },
  digits: number,
): string {
  const value = (of: number | null) => (of ?? 0).toFixed(digits).replace("-", "−");
  return lower === null || upper === null ? value(estimate) : `${value(estimate)} (${value(lower)} to ${value(upper)})`;
}

function contrast(rows: readonly OutlineDescription[], measure: (typeof measures)[number][0], level: number) {
  const differences = [...grouped(rows, ({ horseId }) => horseId).values()].flatMap((of) => {
    const mean = (end: "fore" | "hind") => {
      const values = of.filter((row) => row.end === end).flatMap((row) => row[measure] ?? []);
      return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
    };
    const [fore, hind] = [mean("fore"), mean("hind")];
    return fore === null || hind === null ? [] : [fore - hind];
  });
  if (differences.length === 0) return { estimate: null, lower: null, upper: null, n: 0 };
  return meanInterval(differences, { level });
}

/** Front and hind foot of one side, traced on one day at one stage: the first tracing of each. */
function pairsOf(outlines: readonly TracedOutline[]) {
  const sides = grouped(outlines, ({ horseId, visitDate, side }) => [horseId, visitDate, side].join("\n"));
  const points = ({ wall, landmarks }: TracedOutline) =>
    landmarks === null ? [] : [resampledOutline(wall, POINTS, { start: landmarks.toe, open: "close" })];
  return [...sides.values()].flatMap((feet) => {
    const [fore, hind] = (["fore", "hind"] as const).map((end) => feet.find((outline) => outline.end === end));
    if (fore === undefined || hind === undefined) return [];
    return points(fore).flatMap((first) => points(hind).map((second) => ({ first, second, cluster: fore.horseId })));
  });
}
