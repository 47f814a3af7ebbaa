import type { RandomSource } from "../../estimate/numeric/RandomSource.js";
import type { FootState } from "./FootState.js";
import { rounded } from "./rounded.js";
import type { VisitCells } from "./VisitCells.js";

/**
 * Cracks, bars, white line and the track of an old abscess, or else a ring, at a look at a foot, `daysSinceTrim` after its last trim. Changes the crack of
 * the foot. Cracks and folded bars come with long gaps; a track moves down with the horn and is gone when it is trimmed away.
 */
export function wallCells(
  foot: FootState,
  day: number,
  daysSinceTrim: number,
  growthMmPerDay: number,
  random: RandomSource,
): VisitCells {
  const long = Math.max(0, daysSinceTrim - 45);
  const chance = (base: number, perDay: number) => random.bernoulli(Math.min(0.9, base + perDay * long));
  const stays = foot.crack !== null && random.bernoulli(0.6);
  const begins = chance(foot.shod ? 0.03 : 0.05, 0.006);
  if (!stays) foot.crack = begins ? newCrack(random) : null;
  const overgrown = chance(0.05, 0.009);
  const folded = chance(0.01, 0.006);
  const stretched = chance(0.08, 0.004);
  const separated = random.bernoulli(0.012);
  const length = rounded(8 + 22 * random.uniform());
  return {
    bars: folded ? "folded" : overgrown ? "overgrown" : "level",
    white_line: separated ? "separated" : stretched ? "stretched" : "tight",
    ...(foot.crack === null ? {} : { crack_site: foot.crack.site, crack_from: foot.crack.from, crack_length_mm: length }),
    ...ringCells(foot, day, growthMmPerDay, random.stream("ring")),
    ...trackCells(foot, day, growthMmPerDay, random),
  };
}

function newCrack(random: RandomSource): FootState["crack"] {
  const site = random.pick(["toe", "toe", "quarter", "quarter", "quarter", "heel"] as const);
  return { site, from: random.bernoulli(0.015) ? "coronet" : "ground" };
}

function trackCells(foot: FootState, day: number, growthMmPerDay: number, random: RandomSource): VisitCells {
  if (foot.burstDay === null || day - foot.burstDay < 10) return {};
  const below = growthMmPerDay * (day - foot.burstDay);
  // At the quarters the wall is some two thirds as long as at the toe.
  if (below > 0.66 * foot.trimmed.toeLengthMm) foot.burstDay = null;
  const read = rounded(random.normal(below, 0.8));
  return foot.burstDay === null ? {} : { mark_kind: "abscess_track", mark_below_coronet_mm: read };
}

/** A ring goes round the whole wall, so it is read at the toe, where it stays longest; three times in four somebody reads it. */
function ringCells(foot: FootState, day: number, growthMmPerDay: number, random: RandomSource): VisitCells {
  if (foot.ringDay === null || day - foot.ringDay < 14) return {};
  const below = growthMmPerDay * (day - foot.ringDay);
  const read = rounded(random.normal(below, 0.8));
  if (below > foot.trimmed.toeLengthMm - 3 || !random.bernoulli(0.75)) return {};
  return { mark_kind: "ring", mark_below_coronet_mm: read };
}
