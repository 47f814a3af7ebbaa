import type { Table } from "../chart/Table.js";
import { survivalChart } from "../chart/survivalChart.js";
import { capital } from "../chart/parts/capital.js";
import { rainAfterShoeing, type ShoeInRain } from "../derive/rainAfterShoeing.js";
import { shoeLives } from "../derive/shoeLives.js";
import { clusteredSurvival } from "../estimate/clusteredSurvival.js";
import { describe } from "../estimate/describe.js";
import { logRank } from "../estimate/logRank.js";
import { seededRandom } from "../estimate/numeric/seededRandom.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { seedOfAnswers } from "./seedOfAnswers.js";
import { survivalLine } from "./survivalLine.js";
import { compared } from "./words/compared.js";
import { counted } from "./words/counted.js";
import { howSure } from "./words/howSure.js";
import { pValue } from "./words/pValue.js";
import { tooFewHorses } from "./words/tooFewHorses.js";
import { pointsInterval } from "./words/pointsInterval.js";

const { id, question } = asked("shoes-staying-on");
/** Shares are read off at six weeks, and rain is that of four. */
const SIX_WEEKS = 42;
const RAIN_DAYS = 28;
const leastLost = 5;

const clusterOf = ({ horseId }: Shoe) => horseId;

type Shoe = ShoeInRain & { readonly time: number; readonly event: boolean };

/** Time until a shoe is found lost, and wet first weeks against dry ones. Unit: a shoe; horses as clusters. */
export function shoesStayingOn(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses } = study.settings;
  const shoes = rainAfterShoeing(shoeLives(study), study, RAIN_DAYS).map((shoe): Shoe => ({
    ...shoe,
    time: shoe.days,
    event: shoe.lost,
  }));
  const horses = grouped(shoes, ({ horseId }) => horseId);
  const lost = shoes.filter((shoe) => shoe.lost).length;
  const notEnough = (reason: string): NotEnoughData => ({ kind: "not_enough_data", id, question, reason });
  if (horses.size < minimumHorses)
    return notEnough(tooFewHorses(horses.size, minimumHorses, "a shoe that was seen again", "tell nothing"));
  if (lost < leastLost)
    return notEnough(
      `${capital(counted(lost, "shoe"))} of ${shoes.length} seen again ${lost === 1 ? "was" : "were"} found lost; fewer than ${leastLost} make no curve.`,
    );
  const wetness = halves(shoes);
  const whole = onAtSixWeeks(shoes, level);
  const lines =
    wetness === null
      ? [{ name: "all", of: shoes }]
      : [
          { name: "wet", of: wetness.wet },
          { name: "dry", of: wetness.dry },
        ];
  const wet = wetness === null ? null : wetAndDry(wetness, level);
  return {
    kind: "answer",
    id,
    question,
    sentence: `${whole}${wet === null ? " Wet and dry weeks cannot be told apart: there are too few shoes with rain readings." : ` ${wet.sentence}`}`,
    tables: [lossTable(shoes)],
    charts: [
      survivalChart(
        lines.map(({ name, of }) => survivalLine(name, of, { level, readAt: [28, SIX_WEEKS, 56] })),
        {
          title: wet === null ? "How long shoes stayed on" : wet.title,
          timeTitle: "Days since the shoe was nailed on",
          shareTitle: "Share of shoes not found lost",
          unit: "shoes",
          level,
          intervalNote: "taking shoes as independent",
        },
      ),
    ],
    cautions: [
      "A lost shoe is dated to the visit at which it was found lost; it came off some time before.",
      "Work, turnout, the state of the wall and the time since trimming differ between wet and dry weeks too: went with, not caused.",
    ],
    method: {
      unit: "a shoe from nailing on to being found lost, renewed or last seen",
      n: shoes.length,
      missing: wetness === null ? 0 : shoes.length - wetness.wet.length - wetness.dry.length,
      text: `Kaplan-Meier; a shoe renewed or last seen on is censored then. Wet: more rain than the median of all shoes${wetness === null ? "" : `, ${Math.round(wetness.edgeMm)} mm,`} in the ${RAIN_DAYS} days after it was nailed on, whether it lasted so long or not; missing: shoes without readings for it. ${wet === null ? "" : `${wet.method} `}Shares at ${SIX_WEEKS} days: limits from 2000 resamples of whole horses, seed “${seedOfAnswers}”, since shoes of one horse are alike; the bands of the chart and the log-rank test take shoes as independent and are too sure.`,
      links: ["shoeLives", "rainAfterShoeing", "kaplanMeier", "logRank", "clusteredSurvival"],
    },
  };
}

function onAtSixWeeks(shoes: readonly Shoe[], level: number): string {
  const share = clusteredSurvival(shoes, { time: SIX_WEEKS, clusterOf, random: seededRandom(seedOfAnswers), level });
  const all = `${shoes.filter(({ event }) => event).length} of ${counted(shoes.length, "shoe")} were found lost`;
  if (share.estimate === null) return `${all}; none was watched for ${SIX_WEEKS} days.`;
  return `${all}; at six weeks ${howSure({ ...share, estimate: share.estimate })} were still on.`;
}

interface Halves {
  readonly edgeMm: number;
  readonly wet: readonly Shoe[];
  readonly dry: readonly Shoe[];
}

function halves(shoes: readonly Shoe[]): Halves | null {
  const known = shoes.filter((shoe) => shoe.rainMm !== null);
  if (known.length === 0) return null;
  const edgeMm = describe(known.map(({ rainMm }) => rainMm)).median;
  const [wet, dry] = [known.filter((shoe) => isWet(shoe, edgeMm)), known.filter((shoe) => !isWet(shoe, edgeMm))];
  const enough = (of: readonly Shoe[]) => of.filter(({ event }) => event).length >= leastLost;
  return enough(wet) && enough(dry) ? { edgeMm, wet, dry } : null;
}

function isWet({ rainMm }: Shoe, edgeMm: number): boolean {
  return rainMm !== null && rainMm > edgeMm;
}

function wetAndDry(
  { edgeMm, wet, dry }: Halves,
  level: number,
): { readonly sentence: string; readonly title: string; readonly method: string } {
  const difference = clusteredSurvival([...wet, ...dry], {
    ...{ time: SIX_WEEKS, clusterOf, level },
    compare: (shoe) => isWet(shoe, edgeMm),
    random: seededRandom(seedOfAnswers),
  });
  const test = logRank([wet, dry]);
  const method = `Wet against dry: log-rank test ${test.p === null ? "without a value" : pValue(test.p)}.`;
  const title = compared(difference, 0, {
    above: "More shoes stayed on in wet weeks",
    below: "Fewer shoes stayed on in wet weeks",
    unclear: "Wet and dry weeks cannot be told apart",
  });
  if (difference.estimate === null) return { sentence: `${title}.`, title, method };
  const size = pointsInterval({ ...difference, estimate: difference.estimate });
  return { sentence: `${title}: ${size} wet less dry at six weeks.`, title, method };
}

function lossTable(shoes: readonly Shoe[]): Table {
  return {
    caption: "Shoes seen again after they were nailed on",
    columns: [
      { name: "end", title: "Feet" },
      { name: "shoes", title: "Shoes" },
      { name: "horses", title: "Horses" },
      { name: "lost", title: "Found lost" },
      { name: "days", title: "Days watched" },
    ],
    rows: (["fore", "hind"] as const).flatMap((end) => {
      const of = shoes.filter((shoe) => shoe.end === end);
      if (of.length === 0) return [];
      return [
        {
          end: end === "fore" ? "front" : "hind",
          shoes: of.length,
          horses: new Set(of.map(({ horseId }) => horseId)).size,
          lost: of.filter(({ event }) => event).length,
          days: of.reduce((sum, { time }) => sum + time, 0),
        },
      ];
    }),
  };
}
