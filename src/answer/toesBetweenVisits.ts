import type { Table } from "../chart/Table.js";
import { markGrowth } from "../derive/markGrowth.js";
import { type ToeGrowth, toeGrowth } from "../derive/toeGrowth.js";
import { type GroupGain, toeGain, type ToeGainByHorse } from "../estimate/toeGain.js";
import { herdGrowth } from "../estimate/herdGrowth.js";
import { minimumDetectableOf } from "../estimate/minimumDetectableOf.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { definitionsTable } from "./definitionsTable.js";
import { counted } from "./words/counted.js";
import { listed } from "./words/listed.js";

const { id, question } = asked("toes-between-visits");

/** Toe length before a trim less that after the last one, by horse, shod and bare apart, beside growth of the wall. Unit: a foot between two trims. */
export function toesBetweenVisits(study: Study): Answer | NotEnoughData {
  const { level, minimumHorses } = study.settings;
  const rows = toeGrowth(study);
  const kinds = (["shod", "bare"] as const).map((shoeing) => ({
    shoeing,
    gain: toeGain(
      rows.filter((row) => row.shoeing === shoeing),
      { level },
    ),
  }));
  const found = kinds.flatMap(({ shoeing, gain }) => (gain === null ? [] : [{ shoeing, gain }]));
  if (found.length === 0) {
    const horses = new Set(rows.map(({ horseId }) => horseId)).size;
    const reason = `Toe length after one trim and before the next is on record for ${counted(horses, "horse")}; more are needed to set one beside another.`;
    return { kind: "not_enough_data", id, question, reason };
  }
  const growth = herdGrowth(markGrowth(study), { level, leastHorses: minimumHorses });
  const detectable = minimumDetectableOf(study.visits, "toeLengthMm", { level });
  const longer = found.flatMap(({ gain }) => gain.ofHorses.filter(({ lower }) => gain.mean.estimate < (lower ?? 0)));
  const alike = found.filter((each) => !differ(each)).map(({ shoeing }) => shoeing);
  const means = found.map(({ shoeing, gain }) => `${gain.mean.estimate.toFixed(2)} mm a day ${shoeing}`);
  return {
    kind: "answer",
    id,
    question,
    sentence: `From after one trim to before the next, toes gained ${listed(means)}. ${longer.length === 0 ? "No horse gained clearly more than the others going as it does." : `Clearly more than others going as they do: ${listed(longer.map(({ name }) => name))}.`}`,
    tables: [
      meansTable(found, growth.rates),
      ...found.filter(differ).map(({ shoeing, gain }) => horsesTable(shoeing, gain, rows)),
      definitionsTable(["toeLengthMm"]),
    ],
    charts: [],
    cautions: [
      "Gain of the toe is growth less wear: a bare foot may grow fast and gain little. It is not used to measure growth.",
      "How short the toe was left by the last trim is the farrier's; a toe left long and a toe that ran away look alike on the day.",
      "This is no advice to change an interval or a trim.",
    ],
    method: {
      unit: "a foot between two trims",
      n: found.reduce((sum, { gain }) => sum + gain.n, 0),
      missing: rows.filter(({ shoeing }) => shoeing === null).length,
      text: `Toe length before the trim less toe length after the last one, over the days between; spans with a visit between them that may have been a trim are left out. ${found.map(({ gain }) => gain.method).join(" ")} Horses are drawn towards the mean the less was seen of them.${alike.length === 0 ? "" : ` Horses going ${listed(alike)} differ by no more than chance and are not listed.`} ${detectable === null ? "The smallest detectable change of a toe length is not known here." : `A gain below ${detectable.toFixed(1)} mm over a span cannot be told from reading error.`} Missing: feet of unknown shoeing.`,
      links: ["toeGrowth", "toeGain", "herdGrowth", "minimumDetectableOf"],
    },
  };
}

type Found = readonly { readonly shoeing: "shod" | "bare"; readonly gain: ToeGainByHorse }[];

/** False when all horses are drawn onto their mean: a list of them would say nothing. */
function differ({ gain }: Found[number]): boolean {
  const rates = gain.ofHorses.map(({ estimate }) => estimate);
  return Math.max(...rates) - Math.min(...rates) > 1e-6;
}

function meansTable(found: Found, rates: { readonly slowestMmPerDay: number; readonly fastestMmPerDay: number }): Table {
  return {
    caption: "Gain of the toe between trims, mm a day, beside growth of the wall",
    columns: [
      { name: "name", title: "Feet" },
      { name: "horses", title: "Horses" },
      { name: "n", title: "Spans" },
      { name: "estimate", title: "mm a day", digits: 3 },
      { name: "lower", title: "From", digits: 3 },
      { name: "upper", title: "To", digits: 3 },
    ],
    rows: [
      ...found.map(({ shoeing, gain: { mean } }) => ({
        ...{ name: `${shoeing}, gain of the toe`, horses: mean.horses, n: mean.n },
        ...{ estimate: mean.estimate, lower: mean.lower, upper: mean.upper },
      })),
      {
        ...{ name: "growth of the wall a horse of this herd may have", horses: null, n: null, estimate: null },
        ...{ lower: rates.slowestMmPerDay, upper: rates.fastestMmPerDay },
      },
    ],
  };
}

function horsesTable(shoeing: "shod" | "bare", { ofHorses, mean }: ToeGainByHorse, rows: readonly ToeGrowth[]): Table {
  const sorted = [...ofHorses].sort((a, b) => b.estimate - a.estimate || (a.name < b.name ? -1 : 1));
  const lastGain = (horse: GroupGain) => {
    const own = rows.filter((row) => row.horseId === horse.name && row.shoeing === shoeing);
    const last = own.reduce((latest, row) => (row.to > latest ? row.to : latest), "");
    const gains = own.filter(({ to }) => to === last).map(({ beforeTrimMm, afterTrimMm }) => beforeTrimMm - afterTrimMm);
    return gains.length === 0 ? null : gains.reduce((sum, gain) => sum + gain, 0) / gains.length;
  };
  return {
    caption: `Horses going ${shoeing}: gain of the toe, mm a day, the ten that gained most`,
    columns: [
      { name: "name", title: "Horse" },
      { name: "n", title: "Spans" },
      { name: "estimate", title: "mm a day", digits: 3 },
      { name: "lower", title: "From", digits: 3 },
      { name: "upper", title: "To", digits: 3 },
      { name: "last", title: "Gain before the last trim, mm", digits: 1 },
      { name: "more", title: "Clearly more than the mean" },
    ],
    rows: sorted.slice(0, 10).map((horse) => ({
      ...{ name: horse.name, n: horse.n, estimate: horse.estimate, lower: horse.lower, upper: horse.upper },
      ...{ last: lastGain(horse), more: (horse.lower ?? 0) > mean.estimate ? "yes" : "no" },
    })),
  };
}
