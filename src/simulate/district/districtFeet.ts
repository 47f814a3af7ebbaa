import type { RandomSource } from "../../estimate/numeric/RandomSource.js";
import { dayNumber } from "../../study/dayNumber.js";
import { districtCalendar } from "./districtCalendar.js";
import type { Build, DistrictHorse } from "./DistrictHorse.js";
import type { FootMeasures, FootState } from "./FootState.js";
import { rounded } from "./rounded.js";

/** Width of the fore foot against height at the withers, and frog width over length, by build. */
const builds: Record<Build, { readonly width: number; readonly frogIndex: number; readonly steeperDeg: number }> = {
  "riding horse": { width: 0.76, frogIndex: 0.64, steeperDeg: 0 },
  cob: { width: 0.84, frogIndex: 0.67, steeperDeg: 0 },
  pony: { width: 0.82, frogIndex: 0.66, steeperDeg: 1 },
  "draught cross": { width: 0.88, frogIndex: 0.65, steeperDeg: -1 },
  yearling: { width: 0.77, frogIndex: 0.62, steeperDeg: 1 },
  donkey: { width: 0.73, frogIndex: 0.74, steeperDeg: 6 },
  mule: { width: 0.68, frogIndex: 0.68, steeperDeg: 4 },
};

/**
 * The four feet of a simulated horse at the start. Fore feet are rounder and wider than hind feet; inner walls stand steeper than
 * outer ones; horn colour is drawn for each foot and has nothing to do with thrush.
 */
export function districtFeet(horse: DistrictHorse, random: RandomSource, footSd: number): FootState[] {
  const build = builds[horse.build];
  const foreWidth = horse.heightCm * build.width + random.normal(0, 2.5);
  const foreIndex = random.normal(1.03, 0.022);
  const hindIndex = foreIndex - Math.max(0.01, random.normal(0.07, 0.02));
  const foreLength = foreWidth / foreIndex;
  const toe = 60 + 0.048 * horse.weightKg + random.normal(0, 3);
  const toeHeel = random.normal(2.1, 0.12);
  const gap = Math.max(-2, random.normal(3, 2.2));
  const frogIndex = random.normal(build.frogIndex, 0.05);
  const flareTendency = random.uniform() ** 2;
  const steep = horse.unevenFores ? random.pick(["LF", "RF"] as const) : null;
  const angle = random.normal(50 + build.steeperDeg, 1.6);
  const ringDay = ringOf(random.stream("ring"));
  return (["LF", "RF", "LH", "RH"] as const).map((foot): FootState => {
    const hind = foot === "LH" || foot === "RH";
    const hoofLengthMm = foreLength * (hind ? 0.985 : 1) * (1 + random.normal(0, 0.008));
    const toeAngleDeg = angle + (hind ? 1.5 : 0) + (foot === steep ? 7 : 0) + random.normal(0, 0.7);
    const toeLengthMm = toe * (hind ? 0.98 : 1) + random.normal(0, 1);
    const frogLengthMm = hoofLengthMm * random.normal(0.7, 0.015);
    const trimmed: FootMeasures = {
      hoofWidthMm: hoofLengthMm * (hind ? hindIndex : foreIndex) * (1 + random.normal(0, 0.008)),
      hoofLengthMm,
      toeLengthMm,
      heelHeightMm: toeLengthMm / toeHeel,
      toeAngleDeg,
      heelAngleDeg: toeAngleDeg - gap + random.normal(0, 0.7),
      frogWidthMm: frogLengthMm * frogIndex * (1 + random.normal(0, 0.02)),
      frogLengthMm,
      medialWallAngleDeg: random.normal(80, 1.2),
      lateralWallAngleDeg: random.normal(76.5, 1.2),
    };
    return {
      foot,
      hind,
      shod: horse.shod === "all" || (horse.shod === "fronts" && !hind),
      effect: rounded(random.normal(0, footSd), 4),
      hornColour: random.pick(["dark", "dark", "dark", "light", "striped"] as const),
      trimmed,
      flareTendency,
      creepMm: 0,
      lastGrade: null,
      crack: null,
      burstDay: null,
      ringDay,
    };
  });
}

/** Some horses change feed or keeping in spring or summer, which leaves a ring on all four feet. */
function ringOf(random: RandomSource): number | null {
  const { from, to, share } = districtCalendar.rings;
  return random.bernoulli(share) ? random.integer(dayNumber(from)!, dayNumber(to)!) : null;
}
