import type { Foot } from "../study/Foot.js";
import { footEnd } from "./footEnd.js";
import { footSide } from "./footSide.js";
import type { Study } from "../study/Study.js";
import { grouped } from "../study/grouped.js";
import { type FootDay, footDays } from "./footDays.js";
import { requiredDay } from "./requiredDay.js";
import { stayAt } from "./stayAt.js";

/** One shoe from the day it was nailed on to the day it was found lost or last seen on the foot. */
export interface ShoeLife {
  readonly horseId: string;
  readonly yardId: string | null;
  readonly foot: Foot;
  readonly end: "fore" | "hind" | null;
  /** Day of shoeing or resetting. */
  readonly from: string;
  /** Day it was found lost, taken off or last seen on. */
  readonly to: string;
  readonly days: number;
  /** Found lost. A shoe that was renewed, or is still on, is censored at the last day it was seen on. */
  readonly lost: boolean;
  /** Last day on which it was seen on before it was found lost: it came off after this and not after `to`. */
  readonly seenOn: string;
}

/**
 * Lives of shoes, one row for each shoe that was seen again after it was nailed on, by horse, foot and day.
 *
 * Method: a life starts where the work done is `shoe` or `reset` and ends at the first later visit to that foot at which the shoe is lost, or
 * at which it is renewed or taken off (censored: it was on until then). `tight`, `worn` and `sprung` shoes are on. A loss is found at a visit,
 * so its day is interval-censored between `seenOn` and `to`; a visit made because the shoe was lost is close to the day itself, one
 * at the end of the interval may not be.
 *
 * Missing: a visit that does not say the state of the shoe tells nothing about it; a shoe never seen again has no row. A life ends,
 * censored, at the last day it was seen on when nothing later is known.
 *
 * Source: common practice, no source.
 */
export function shoeLives(study: Pick<Study, "visits" | "horses">): ShoeLife[] {
  const stays = grouped(study.horses, (stay) => stay.horseId);
  const sided = study.visits.filter(({ foot }) => footSide(foot) !== null);
  return footDays(sided).flatMap((history) => {
    const { horseId, foot } = history[0]!.rows[0]!;
    return livesOf(history).map((life): ShoeLife => {
      const yardId = stayAt(stays.get(horseId) ?? [], horseId, life.from)?.yardId ?? null;
      const days = requiredDay(life.to) - requiredDay(life.from);
      return { horseId, yardId, foot, end: footEnd(foot), days, ...life };
    });
  });
}

type Life = Pick<ShoeLife, "from" | "to" | "lost" | "seenOn">;

function livesOf(history: readonly FootDay[]): Life[] {
  const lives: Life[] = [];
  let shoe: { readonly from: string; seenOn: string } | null = null;
  const close = (lost: string | null) => {
    if (shoe !== null && (lost !== null || shoe.seenOn > shoe.from)) {
      lives.push({ from: shoe.from, to: lost ?? shoe.seenOn, lost: lost !== null, seenOn: shoe.seenOn });
    }
    shoe = null;
  };
  for (const { visitDate, rows } of history) {
    const states = rows.map(({ shoeState }) => shoeState);
    const isOn = states.some((state) => state === "tight" || state === "worn" || state === "sprung");
    if (states.includes("lost")) close(visitDate);
    else if (shoe !== null && isOn) shoe.seenOn = visitDate;
    const work = rows.map(({ workDone }) => workDone);
    if (states.includes("bare") || work.some((done) => done === "trim" || done === "shoe" || done === "reset")) close(null);
    if (work.includes("shoe") || work.includes("reset")) shoe = { from: visitDate, seenOn: visitDate };
  }
  close(null);
  return lives;
}
