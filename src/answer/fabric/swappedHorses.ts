import { fabricIssue } from "./fabricIssue.js";
import { fabricMeasures } from "../../derive/fabric/fabricMeasures.js";
import type { FootSet, StandingFoot } from "../../derive/fabric/FootSet.js";
import { footSets } from "../../derive/fabric/footSets.js";
import { stayAt } from "../../derive/stayAt.js";
import { flipEvidence } from "../../estimate/swap/flipEvidence.js";
import { flipInflation } from "../../estimate/swap/flipInflation.js";
import type { Prediction } from "../../estimate/swap/Prediction.js";
import { predictions } from "../../estimate/swap/predictions.js";
import { spreadOf } from "../../estimate/swap/spreadOf.js";
import { grouped } from "../../study/grouped.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";
import { footHistories } from "./swaps/footHistories.js";
import { hornFlip } from "./swaps/hornFlip.js";
import { FEWEST_DAYS } from "./swaps/pairEvidence.js";
import { swapLimit } from "./swaps/swapLimit.js";
import { LEFT_WITHOUT_BEST, withoutBest } from "./swaps/withoutBest.js";

const feet = ["LF", "RF", "LH", "RH"] as const satisfies readonly StandingFoot[];
/** A set in which no measure lies farther than this many standard deviations from its own horse is nobody else's. */
const OUT_OF_CHARACTER = 2;

interface Horse {
  readonly set: FootSet;
  /** Mean of the four feet, for each of `fabricMeasures`. */
  readonly values: readonly (number | null)[];
  readonly expected: readonly Prediction[];
}

/**
 * Two horses of a yard whose rows of one day were probably exchanged: all four feet of each fit the other horse better.
 *
 * Method: as in `swappedLabels`, with the mean of the four feet of one horse less that of the other on the same day at the same stage, and
 * the horn colour of each foot. Only sets out of character for their own horse are compared, and each of the two must fit the other
 * horse better.
 *
 * Missing: a measure counts where all four feet have it, and a horse with three days or more. Rows of one horse under the name of another
 * that was not seen on that day are not looked for.
 *
 * Source: own.
 */
export function swappedHorses(
  { visits, horses }: Pick<Study, "visits" | "horses">,
  sets: readonly FootSet[] = footSets(visits),
): Issue[] {
  const occasions = [...grouped(sets, ({ horseId }) => horseId).values()].map((ofHorse) =>
    ofHorse.flatMap((set) => {
      const values = meansOf(set);
      return values.every((value) => value === null) ? [] : [{ set, day: set.visitDate, values }];
    }),
  );
  const spreads = fabricMeasures.map(({ step }, place) => spreadOf(occasions, place, { least: step ** 2 / 12 }));
  const all = occasions.flatMap((ofHorse): Horse[] => {
    const expected = predictions(ofHorse, spreads, FEWEST_DAYS);
    return ofHorse.map(({ set, values }, place) => ({ set, values, expected: expected[place] ?? [] }));
  });
  const stays = grouped(horses, ({ horseId }) => horseId);
  const yardDays = [
    ...grouped(all, ({ set: { horseId, visitDate, stage } }) =>
      [visitDate, stayAt(stays.get(horseId) ?? [], horseId, visitDate)?.yardId ?? "", stage ?? ""].join("\n"),
    ).values(),
  ];
  const neighbours = yardDays.flatMap((day) => day.slice(1).map((horse, place) => evidenceOf(day[place] ?? horse, horse)));
  const inflation = flipInflation(neighbours);
  const pairs = yardDays.flatMap((day) => pairsOf(day.filter(outOfCharacter)));
  const limit = swapLimit(pairs.length);
  const histories = footHistories(sets);
  return pairs.flatMap(([a, b]) => {
    const horn = feet.map((foot) => hornFlip(a.set, b.set, foot, histories, FEWEST_DAYS));
    const { gap, rest } = withoutBest([...evidenceOf(a, b).parts.map((part) => part / inflation), ...horn]);
    const told = gap >= limit && rest >= LEFT_WITHOUT_BEST && misfit(a, b) > 0 && misfit(b, a) > 0;
    return told ? [issueOf(a, b, gap, limit, pairs.length)] : [];
  });
}

function meansOf({ rows }: FootSet): (number | null)[] {
  return fabricMeasures.map(({ field }) => {
    const values = feet.flatMap((foot) => rows[foot]?.[field] ?? []);
    return values.length < feet.length ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
  });
}

function outOfCharacter({ values, expected }: Horse): boolean {
  return values.some((value, place) => {
    const prediction = expected[place] ?? null;
    if (value === null || prediction === null) return false;
    return Math.abs(value - prediction.expected) > OUT_OF_CHARACTER * Math.sqrt(prediction.variance);
  });
}

/** How much worse a set fits its own horse than another one: half the difference of the squared standardised distances. */
function misfit({ values, expected }: Horse, other: Horse): number {
  return values.reduce<number>((sum, value, place) => {
    const [own, others] = [expected[place] ?? null, other.expected[place] ?? null];
    if (value === null || own === null || others === null) return sum;
    return sum + ((value - own.expected) ** 2 / own.variance - (value - others.expected) ** 2 / others.variance) / 2;
  }, 0);
}

function pairsOf(day: readonly Horse[]): [Horse, Horse][] {
  return day.flatMap((a, place) =>
    day.slice(place + 1).flatMap((b): [Horse, Horse][] => (a.set.horseId === b.set.horseId ? [] : [[a, b]])),
  );
}

function evidenceOf(a: Horse, b: Horse) {
  const contrast = a.values.map((value, place) => difference(value, b.values[place] ?? null));
  const expected = a.expected.map((of, place): Prediction => {
    const less = b.expected[place] ?? null;
    if (of === null || less === null) return null;
    return {
      expected: of.expected - less.expected,
      variance: of.variance + less.variance,
      history: of.history - less.history,
      days: Math.min(of.days, less.days),
    };
  });
  return flipEvidence(contrast, expected);
}

function difference(of: number | null, less: number | null): number | null {
  return of === null || less === null ? null : of - less;
}

function issueOf(a: Horse, b: Horse, gap: number, limit: number, compared: number): Issue {
  const rows = [a, b].flatMap(({ set }) => feet.flatMap((foot) => set.rows[foot] ?? []));
  const lines = rows.map(({ line }) => line).sort((x, y) => x - y);
  const { parts } = evidenceOf(a, b);
  const best = parts.indexOf(Math.max(...parts));
  const title = fabricMeasures[best]?.title ?? "";
  const unit = fabricMeasures[best]?.unit === "deg" ? "degrees" : "mm";
  const told = [a, b].map(({ set, values, expected }) => {
    const [here, usual] = [values[best] ?? 0, expected[best]?.history ?? 0];
    return `${set.horseId} ${here.toFixed(1)} here and ${usual.toFixed(1)} ${unit} on ${expected[best]?.days ?? 0} other days`;
  });
  return fabricIssue({
    file: rows[0]?.file ?? "visits.csv",
    line: lines[0] ?? null,
    column: "horse_id",
    code: "horses_swapped",
    found:
      `the rows of ${a.set.horseId} and ${b.set.horseId} on ${a.set.visitDate} were probably exchanged: mean ${title} of the four feet ` +
      `${told.join(", ")}; the log-likelihood is better by ${gap.toFixed(1)} the other way round, where ${limit.toFixed(1)} is asked ` +
      `of ${compared} pairs`,
    hint: `Look at the paper record of that day; if it is so, exchange horse_id in lines ${lines.join(", ")}.`,
  });
}
