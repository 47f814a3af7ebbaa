import type { FootSet, StandingFoot } from "../../../derive/fabric/FootSet.js";
import { grouped } from "../../../study/grouped.js";

/** What was seen of one foot on one day. */
export interface FootLook {
  readonly visitDate: string;
  readonly hornColour: string | null;
  readonly shoe: "bare" | "shod" | null;
  readonly markMm: number | null;
}

/** What was seen of every foot of a herd on every day. */
export interface FootHistories {
  /** The looks at one foot by day, in order. */
  readonly looks: (horseId: string, foot: StandingFoot) => readonly FootLook[];
  /** Share of looks at a foot that tell of a new mark, for the chance of one; at least one in a hundred. */
  readonly newMarkShare: number;
}

const LEAST_SHARE = 0.01;

/** The looks at the feet of sets, by horse and foot; several sets of a day make one look, the first word of each kind counts. */
export function footHistories(sets: readonly FootSet[]): FootHistories {
  const feet = (["LF", "RF", "LH", "RH"] as const).map((foot) => {
    const seen = sets.flatMap(({ rows }) => rows[foot] ?? []);
    const days = grouped(seen, ({ horseId, visitDate }) => `${horseId}\n${visitDate}`);
    const looks = [...days.values()].map((rows) => {
      const first = <Value>(of: (row: (typeof rows)[number]) => Value | null) =>
        rows.map(of).find((value) => value !== null) ?? null;
      return {
        horseId: rows[0]?.horseId ?? "",
        visitDate: rows[0]?.visitDate ?? "",
        hornColour: first(({ hornColour }) => hornColour),
        shoe: first(({ shoeState }) =>
          shoeState === null ? null : shoeState === "bare" ? ("bare" as const) : ("shod" as const),
        ),
        markMm: first(({ markKind, markBelowCoronetMm }) => (markKind === "abscess_track" ? markBelowCoronetMm : null)),
      };
    });
    return [foot, grouped(looks, ({ horseId }) => horseId)] as const;
  });
  const byFoot = new Map(feet);
  const all = feet.flatMap(([, horses]) => [...horses.values()].flat());
  const marked = all.filter(({ markMm }) => markMm !== null).length;
  return {
    looks: (horseId, foot) => byFoot.get(foot)?.get(horseId) ?? [],
    newMarkShare: Math.max(LEAST_SHARE, marked / Math.max(1, all.length)),
  };
}
