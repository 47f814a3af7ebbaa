import { dateOfDay } from "../../study/dateOfDay.js";
import { dayNumber } from "../../study/dayNumber.js";
import type { RandomSource } from "../../estimate/numeric/RandomSource.js";
import { districtCalendar } from "./districtCalendar.js";
import type { Build, DistrictHorse } from "./DistrictHorse.js";
import { districtYards } from "./districtYards.js";
import { horseNames } from "./horseNames.js";
import { rounded } from "./rounded.js";

/** Heights at the withers in cm and body weight in kg per cm of height over 50, by build. */
const builds: Record<Build, { readonly height: number; readonly spread: number; readonly kgPerCm: number }> = {
  "riding horse": { height: 162, spread: 4, kgPerCm: 4.8 },
  cob: { height: 148, spread: 4, kgPerCm: 5.1 },
  pony: { height: 131, spread: 4.5, kgPerCm: 3.8 },
  "draught cross": { height: 166, spread: 3, kgPerCm: 5.8 },
  yearling: { height: 138, spread: 5, kgPerCm: 3.4 },
  donkey: { height: 114, spread: 3, kgPerCm: 2.9 },
  mule: { height: 134, spread: 2, kgPerCm: 3.7 },
};

const rideable: readonly Build[] = [
  "riding horse",
  "riding horse",
  "riding horse",
  "cob",
  "cob",
  "pony",
  "pony",
  "draught cross",
];
const uses = ["hacking", "riding school", "jumping", "driving", "eventing", "light work"];

/** The animals of the invented district, yard by yard; `horseSd` is the spread of their own log odds of thrush. */
export function districtHerd(random: RandomSource, horseSd: number): DistrictHorse[] {
  const names = shuffled(horseNames, random);
  const places = districtYards.flatMap(({ yardId, horses }) => Array.from({ length: horses }, (_, place) => ({ yardId, place })));
  return places.map(({ yardId, place }, index) => animal(names[index]!, yardId, place, random.stream(index), horseSd));
}

function animal(horseId: string, yardId: string, place: number, random: RandomSource, horseSd: number): DistrictHorse {
  const build = buildOf(yardId, place, random);
  const { height, spread, kgPerCm } = builds[build];
  const heightCm = rounded(random.normal(height, spread));
  const weightKg = rounded((heightCm - 50) * kgPerCm * (1 + random.normal(0, 0.05)), -1) || 20;
  const shod = build === "donkey" || build === "mule" || build === "yearling" ? "bare" : random.pick(shoeing);
  const birthYear = build === "yearling" ? 2024 : 2025 - random.integer(4, random.bernoulli(0.2) ? 27 : 17);
  const joins = place === 3 && yardId !== "Brackloft";
  const leaves = place === 5 && yardId !== "Oddley";
  return {
    horseId,
    yardId,
    build,
    birthYear,
    birthYearEstimated: build !== "yearling" && random.bernoulli(0.2),
    sex: random.bernoulli(0.5) ? "mare" : random.bernoulli(0.95) ? "gelding" : "stallion",
    heightCm,
    weightKg,
    shod,
    use: build === "yearling" ? "unbroken" : build === "donkey" ? "companion" : random.pick(uses),
    plannedIntervalDays: plannedDays(shod, place, random),
    joinedOn: joins ? dayInside(random, "2025-03-01", "2025-10-31") : null,
    leftOn: leaves ? dayInside(random, "2025-07-01", "2025-12-20") : null,
    moves: yardId === districtCalendar.move.fromYardId && place === 7,
    lost: yardId === "Tarnstead" && place === 9,
    awkwardHinds: place === 8,
    unevenFores: place === 1 && (yardId === "Sallowmere" || yardId === "Quernside" || yardId === "Wetherholt"),
    slipDays: random.normal(0, 2.5),
    growthMmPerDay: rounded(Math.min(0.31, Math.max(0.2, random.normal(0.25, 0.025))), 3),
    effect: rounded(random.normal(0, horseSd), 4),
  };
}

const shoeing = ["bare", "bare", "fronts", "all", "all"] as const;

function buildOf(yardId: string, place: number, random: RandomSource): Build {
  if (place === 0 && (yardId === "Sallowmere" || yardId === "Quernside")) return "donkey";
  if (place === 6 && yardId === "Quernside") return "mule";
  if (place === 2 && yardId !== "Brackloft" && yardId !== "Oddley") return "yearling";
  return random.pick(rideable);
}

function plannedDays(shod: DistrictHorse["shod"], place: number, random: RandomSource): number | null {
  if (place === 11) return null;
  return shod === "bare" ? random.pick([42, 49, 56, 56]) : random.pick([35, 42, 42, 49]);
}

function dayInside(random: RandomSource, from: string, to: string): string {
  return dateOfDay(random.integer(dayNumber(from)!, dayNumber(to)!));
}

function shuffled<Item>(items: readonly Item[], random: RandomSource): Item[] {
  const order = [...items];
  for (let place = order.length - 1; place > 0; place--) {
    const other = random.integer(0, place);
    [order[place], order[other]] = [order[other]!, order[place]!];
  }
  return order;
}
