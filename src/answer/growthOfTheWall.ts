import type { Table } from "../chart/Table.js";
import { markGrowth } from "../derive/markGrowth.js";
import { type GroupGrowth, type HerdGrowth, herdGrowth } from "../estimate/herdGrowth.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { publishedGrowthTable } from "./publishedGrowthTable.js";
import { counted } from "./words/counted.js";
import { levelText } from "../chart/parts/levelText.js";

const { id, question } = asked("growth-of-the-wall");
const DAYS_A_MONTH = 365.25 / 12;

/** Growth from marks that were followed, pooled with a mixed model. Unit: a span between two sightings of one mark. */
export function growthOfTheWall(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses } = study.settings;
  const spans = markGrowth(study);
  const growth = herdGrowth(spans, { level, leastHorses: minimumHorses });
  const { mean, horseSd } = growth;
  if (mean === null || horseSd === null) {
    const reason = `${growth.note ?? ""} Until then the published range of 0.20 to 0.31 mm a day stands in: measure the same ring or track below the hairline at two visits.`;
    return { kind: "not_enough_data", id, question, reason };
  }
  const { slowestMmPerDay, fastestMmPerDay } = growth.rates;
  return {
    kind: "answer",
    id,
    question,
    sentence: `Walls grew ${mean.estimate.toFixed(3)} mm a day on average over ${counted(growth.horses, "horse")}${limits(mean)}, ${(mean.estimate * DAYS_A_MONTH).toFixed(1)} mm a month; a horse of this herd that was not followed may grow ${slowestMmPerDay.toFixed(2)} to ${fastestMmPerDay.toFixed(2)} mm a day.`,
    tables: [
      groupTable("By season of the middle of the span", "Season", growth.seasons, minimumHorses),
      groupTable("By age class", "Age", growth.ages, minimumHorses),
      groupTable("By horse, drawn towards the mean the less was seen of it", "Horse", growth.ofHorses, 1),
      publishedGrowthTable(),
    ],
    charts: [],
    cautions: [
      "Only the distance of a mark from the hairline measures growth; toe lengths across a trim never do, and are not used.",
      "Growth of the wall is not gain of the toe: a bare foot wears.",
    ],
    method: {
      unit: "a span between two sightings of one mark",
      n: growth.n,
      missing: growth.short,
      text: methodWords(growth),
      links: ["herdGrowth", "markGrowth", "markTracks", "fitMixedLinear"],
    },
  };
}

function limits({ lower, upper, level }: GroupGrowth): string {
  if (lower === null || upper === null) return "";
  return ` (${levelText(level)} interval ${lower.toFixed(3)} to ${upper.toFixed(3)})`;
}

function methodWords({ feet, horses, horseSd, note, method }: HerdGrowth): string {
  return `${method}. ${counted(feet, "foot", "feet")} of ${counted(horses, "horse")}; horses differ with a standard deviation of ${(horseSd ?? 0).toFixed(3)} mm a day. Missing: spans shorter than 21 days, in which an error of reading is most of the growth.${note === null ? "" : ` ${note}`}`;
}

function groupTable(caption: string, heading: string, groups: readonly GroupGrowth[], minimumHorses: number): Table {
  return {
    caption: `Growth, mm a day. ${caption}`,
    columns: [
      { name: "name", title: heading },
      { name: "horses", title: "Horses" },
      { name: "n", title: "Spans" },
      { name: "estimate", title: "mm a day", digits: 3 },
      { name: "lower", title: "From", digits: 3 },
      { name: "upper", title: "To", digits: 3 },
    ],
    rows: groups.map(({ name, horses, n, estimate, lower, upper }) => ({ name, horses, n, estimate, lower, upper })),
    greyed: groups.flatMap(({ horses }, row) =>
      horses < minimumHorses ? [{ row, reason: `fewer than ${minimumHorses} horses` }] : [],
    ),
  };
}
