import type { Table } from "../chart/Table.js";
import { asOfDate } from "../derive/asOfDate.js";
import { dueDates } from "../derive/dueDates.js";
import { horseVisits, type HorseVisit } from "../derive/horseVisits.js";
import { dayNumber } from "../study/dayNumber.js";
import type { Foot } from "../study/Foot.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import type { Answer, NotEnoughData } from "./Answer.js";
import { asked } from "./asked.js";
import { counted } from "./words/counted.js";
import { footInWords } from "./words/footInWords.js";
import { listed } from "./words/listed.js";
import { shortDate } from "./words/shortDate.js";

const { id, question } = asked("feet-long-unseen");
const four: readonly Foot[] = ["LF", "RF", "LH", "RH"];

interface Unseen {
  readonly horseId: string;
  readonly yardId: string | null;
  readonly foot: Foot;
  /** Last day on which it was looked at; null when never. */
  readonly lastSeen: string | null;
  readonly days: number | null;
  /** Visits to the horse after that day. */
  readonly visits: number;
  readonly reason: string | null;
}

/**
 * Feet not looked at at the last visit to their horse, by the days since somebody did look. Unit: a foot of a horse that is still there.
 * Missing: a foot of which the last visit does not say whether it was looked at is not judged.
 */
export function feetLongUnseen(study: Study): Answer | NotEnoughData {
  const asOf = asOfDate(study);
  const visits = grouped(
    horseVisits(study).filter(({ visitDate }) => asOf === null || visitDate <= asOf),
    ({ horseId }) => horseId,
  );
  const there = dueDates(study).filter(({ horseId, lastSeen }) => lastSeen !== null && visits.has(horseId));
  if (asOf === null || there.length === 0)
    return { kind: "not_enough_data", id, question, reason: "No horse that is still there has had a visit." };
  const states = there.flatMap(({ horseId }) => four.map((foot) => visits.get(horseId)?.at(-1)?.feet.get(foot)?.state));
  const judged = states.filter((state) => state === "seen" || state === "not_seen").length;
  if (judged === 0)
    return { kind: "not_enough_data", id, question, reason: "No last visit says of any foot whether it was looked at." };
  const unseen = there
    .flatMap(({ horseId, yardId }) => four.flatMap((foot) => unseenOf(visits.get(horseId) ?? [], foot, yardId, asOf)))
    .sort((a, b) => (b.days ?? Infinity) - (a.days ?? Infinity) || compare(a.horseId, b.horseId));
  return {
    kind: "answer",
    id,
    question,
    sentence: sentenceOf(unseen, judged),
    tables: unseen.length === 0 ? [] : [tableOf(unseen, asOf)],
    charts: [],
    cautions: ["A foot that was not looked at is not a sound foot."],
    method: {
      unit: "a foot of a horse that is still there",
      n: judged,
      missing: 4 * there.length - judged,
      text: `Counts, as of ${shortDate(asOf)}. Not looked at: said so at the last visit to the horse, for any reason of visit. Days run from the last day on which the foot was looked at; a later visit that does not say counts as a visit without a look.`,
      links: ["horseVisits", "examination", "dueDates"],
    },
  };
}

function unseenOf(visits: readonly HorseVisit[], foot: Foot, yardId: string | null, asOf: string): Unseen[] {
  const latest = visits.at(-1);
  const look = latest?.feet.get(foot);
  if (latest === undefined || look?.state !== "not_seen") return [];
  const lastSeen = visits.filter(({ feet }) => feet.get(foot)?.state === "seen").at(-1)?.visitDate ?? null;
  return [
    {
      ...{ horseId: latest.horseId, yardId, foot, lastSeen },
      days: lastSeen === null ? null : daysBetween(lastSeen, asOf),
      visits: visits.filter(({ visitDate }) => lastSeen === null || visitDate > lastSeen).length,
      reason: look.notExaminedReason,
    },
  ];
}

function daysBetween(from: string, to: string): number | null {
  const [start, end] = [dayNumber(from), dayNumber(to)];
  return start === null || end === null ? null : end - start;
}

function sentenceOf(unseen: readonly Unseen[], judged: number): string {
  if (unseen.length === 0) return `Every foot was looked at at the last visit to its horse (${counted(judged, "foot", "feet")}).`;
  const named = unseen.map(
    ({ horseId, foot, days }) => `${horseId}, ${footInWords(foot)} (${days === null ? "never" : counted(days, "day")})`,
  );
  const horses = new Set(unseen.map(({ horseId }) => horseId)).size;
  return `${unseen.length} of ${judged} feet, of ${counted(horses, "horse")}, were not looked at at the last visit to the horse. Longest unseen: ${listed(named, 4)}.`;
}

function tableOf(unseen: readonly Unseen[], asOf: string): Table {
  return {
    caption: `Feet not looked at at the last visit, as of ${shortDate(asOf)}`,
    columns: [
      { name: "horse", title: "Horse" },
      { name: "yard", title: "Yard" },
      { name: "foot", title: "Foot" },
      { name: "lastSeen", title: "Last looked at" },
      { name: "days", title: "Days since" },
      { name: "visits", title: "Visits since" },
      { name: "reason", title: "Reason given" },
    ],
    rows: unseen.map(({ horseId, yardId, foot, lastSeen, days, visits, reason }) => ({
      ...{ horse: horseId, yard: yardId, foot: footInWords(foot) },
      lastSeen: lastSeen === null ? null : shortDate(lastSeen),
      ...{ days, visits, reason },
    })),
  };
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
