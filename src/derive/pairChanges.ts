import { grouped } from "../study/grouped.js";
import { byVisit } from "./byVisit.js";
import { requiredDay } from "./requiredDay.js";
import type { UnevenPair } from "./unevenPairs.js";

/** Change of the left-right difference in toe angle of one pair, from the first to the last time both feet were measured. */
export interface PairChange extends Pick<UnevenPair, "horseId" | "end" | "stage"> {
  readonly from: string;
  readonly to: string;
  readonly days: number;
  readonly times: number;
  /** Left minus right, degrees. */
  readonly firstDeg: number;
  readonly lastDeg: number;
  /** Growth of the gap between the two, without sign; above 0 the pair drifts apart. */
  readonly driftDeg: number;
  readonly minimumDetectableDeg: number | null;
  /** The difference moved by more than the minimum detectable change; null when that is not known. */
  readonly detectable: boolean | null;
}

/**
 * Pairs drifting apart, one row for each horse, end and stage at which both feet were measured on two days or more, in the order of the
 * pairs given.
 *
 * Method: last minus first difference of left and right toe angle. The difference of two differences carries four readings, so it is
 * held to sqrt(2) times the minimum detectable change of one angle. `driftDeg` compares the gaps without sign: a pair may also
 * change over, which is a large movement and little drift.
 *
 * Missing: a day without both angles does not count; without a minimum detectable change `detectable` is null.
 *
 * Source: common practice, no source.
 */
export function pairChanges(
  pairs: readonly UnevenPair[],
  options: { readonly minimumDetectableAngleDeg?: number } = {},
): PairChange[] {
  const angle = options.minimumDetectableAngleDeg;
  const least = angle === undefined ? null : angle * Math.SQRT2;
  const measured = pairs.flatMap((pair) =>
    pair.toeAngleDifferenceDeg === null ? [] : [{ ...pair, differenceDeg: pair.toeAngleDifferenceDeg }],
  );
  return [...grouped(measured, ({ horseId, end, stage }) => [horseId, end, stage].join("\n")).values()].flatMap((unsorted) => {
    const history = [...unsorted].sort(byVisit);
    const [first, last] = [history[0]!, history.at(-1)!];
    if (history.length < 2) return [];
    const { horseId, end, stage } = first;
    const [firstDeg, lastDeg] = [first.differenceDeg, last.differenceDeg];
    return [
      {
        ...{ horseId, end, stage, from: first.visitDate, to: last.visitDate },
        days: requiredDay(last.visitDate) - requiredDay(first.visitDate),
        times: history.length,
        ...{ firstDeg, lastDeg, driftDeg: Math.abs(lastDeg) - Math.abs(firstDeg), minimumDetectableDeg: least },
        detectable: least === null ? null : Math.abs(lastDeg - firstDeg) > least,
      },
    ];
  });
}
