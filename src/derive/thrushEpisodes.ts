import type { Foot } from "../study/Foot.js";
import { grouped } from "../study/grouped.js";
import type { FootCase } from "./FootCase.js";

/** One run of graded visits at which one foot had thrush, with what is known of its beginning and end. */
export interface ThrushEpisode {
  readonly horseId: string;
  /** Yard at the first visit of the run. */
  readonly yardId: string | null;
  readonly foot: Foot;
  readonly end: "fore" | "hind" | null;
  /**
   * `new`: after a clear visit, the first of that foot. `again`: after a clear visit that had ended an earlier run. `from_the_start`: at
   * the first graded visit of the foot, so that its beginning is not known.
   */
  readonly kind: "new" | "again" | "from_the_start";
  /** Last clear visit before it: it began after this day and not after `firstSeen`. Null when from the start. */
  readonly beganAfter: string | null;
  readonly firstSeen: string;
  readonly lastSeen: string;
  /** First clear visit after it: it cleared after `lastSeen` and not after this day. Null while it stands. */
  readonly clearOn: string | null;
  /** Graded visits in the run, all with thrush. */
  readonly visits: number;
  readonly worstGrade: number;
}

/**
 * Episodes of thrush of each foot, by horse, foot and day.
 *
 * Method: a run of graded visits that follow each other, all of them cases; visits without a grade are passed over. Both ends are
 * interval-censored: an episode began after `beganAfter` and not after `firstSeen`, and ended after `lastSeen` and not after
 * `clearOn`. What came and went between two visits is not seen, and two episodes with no visit between them count as one.
 *
 * Missing: specimens and ungraded feet are left out. An episode without a clear visit after it stands: its end is censored at `lastSeen`.
 *
 * Source: common practice, no source.
 */
export function thrushEpisodes(feet: readonly FootCase[]): ThrushEpisode[] {
  const graded = feet.filter(({ thrush }) => thrush !== null);
  return [...grouped(graded, ({ horseId, foot }) => `${horseId}\n${foot}`)]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([, history]) => episodesOf([...history].sort((a, b) => (a.visitDate < b.visitDate ? -1 : 1))));
}

function episodesOf(history: readonly FootCase[]): ThrushEpisode[] {
  const episodes: ThrushEpisode[] = [];
  let run: FootCase[] = [];
  let clear: string | null = null;
  const close = (clearOn: string | null) => {
    const [first, last] = [run[0], run.at(-1)];
    if (first === undefined || last === undefined) return;
    const { horseId, yardId, foot, end } = first;
    episodes.push({
      ...{ horseId, yardId, foot, end },
      kind: clear === null ? "from_the_start" : episodes.length === 0 ? "new" : "again",
      ...{ beganAfter: clear, firstSeen: first.visitDate, lastSeen: last.visitDate, clearOn },
      visits: run.length,
      worstGrade: Math.max(...run.map(({ thrushGrade }) => thrushGrade!)),
    });
    run = [];
  };
  for (const visit of history) {
    if (visit.thrush) run.push(visit);
    else {
      close(visit.visitDate);
      clear = visit.visitDate;
    }
  }
  close(null);
  return episodes;
}
