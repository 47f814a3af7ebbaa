import { fabricMeasures } from "../../../derive/fabric/fabricMeasures.js";
import { footContrast } from "../../../derive/fabric/footContrast.js";
import type { FootPair } from "../../../derive/fabric/FootPair.js";
import type { FootSet } from "../../../derive/fabric/FootSet.js";
import { flipEvidence } from "../../../estimate/swap/flipEvidence.js";
import { predictions } from "../../../estimate/swap/predictions.js";
import { spreadOf } from "../../../estimate/swap/spreadOf.js";
import type { FootHistories } from "./footHistories.js";
import { lookEvidence } from "./lookEvidence.js";
import type { PairSwap } from "./PairSwap.js";

/** The horse's own history must span so many other days: with one, nobody could say which of the two is wrong. */
export const FEWEST_DAYS = 2;

/** Details of a pair that plainly was not exchanged are never shown, and are not kept: there are many. */
const FAR_BELOW = -4;

/**
 * The evidence on one pair of feet in every set of a herd (`histories`: the sets of each horse), from the measures, horn colour, shoe and marks
 * of the same feet on the horse's other days. Sets of which nothing can be said are left out.
 */
export function pairEvidence(
  histories: readonly (readonly FootSet[])[],
  pair: FootPair,
  feet: FootHistories,
): ReadonlyMap<FootSet, PairSwap> {
  const measured = histories.map((sets) =>
    sets.flatMap((set) => {
      const values = footContrast(set, pair);
      return values === null ? [] : [{ set, day: set.visitDate, values }];
    }),
  );
  // Left less right is nought in the mean of a herd; fore less hind is not.
  const mirrored = pair[0].charAt(1) === pair[1].charAt(1);
  const spreads = fabricMeasures.map(({ step }, place) =>
    spreadOf(measured, place, { ...(mirrored && { mean: 0 }), least: (2 * step ** 2) / 12 }),
  );
  const found = new Map<FootSet, PairSwap>();
  for (const ofHorse of measured) {
    const expected = predictions(ofHorse, spreads, FEWEST_DAYS);
    ofHorse.forEach(({ set, values }, place) => {
      const expectations = expected[place] ?? [];
      const evidence = flipEvidence(values, expectations);
      const { gap, information } = evidence;
      if (gap > FAR_BELOW) found.set(set, { ...evidence, contrast: values, expected: expectations, others: [] });
      else found.set(set, { ...nothingMeasured, gap, information, parts: [gap] });
    });
  }
  for (const set of histories.flat()) {
    const others = lookEvidence(set, pair, feet, FEWEST_DAYS);
    if (others.length > 0) found.set(set, { ...(found.get(set) ?? nothingMeasured), others });
  }
  return found;
}

const nothingMeasured = { gap: 0, information: 0, parts: [], contrast: [], expected: [], others: [] };
