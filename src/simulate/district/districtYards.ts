/** One yard of the invented district. */
export interface DistrictYard {
  readonly yardId: string;
  readonly gaugeId: string;
  readonly gaugeKm: number;
  readonly ground: string;
  readonly bedding: string;
  readonly turnoutHours: number;
  readonly horses: number;
  /** Days of the week on which the farrier comes, 0 Sunday to 6 Saturday. */
  readonly weekdays: readonly number[];
  /** Who usually looks at the feet there. */
  readonly observerId: string;
  /** Rank of its ground, 1 the driest. */
  readonly wetness: number;
  /** Visits run late. */
  readonly late: boolean;
}

/** The yards of the invented district Ossenvale. No such place, yard or gauge is meant. */
// prettier-ignore
export const districtYards: readonly DistrictYard[] = [
  { yardId: "Sallowmere", gaugeId: "Ossen Weir", gaugeKm: 2.4, ground: "river meadow, floods at the gate", bedding: "straw", turnoutHours: 20, horses: 25, weekdays: [1, 4], observerId: "K", wetness: 6, late: false },
  { yardId: "Tarnstead", gaugeId: "Ossen Weir", gaugeKm: 6.1, ground: "clay pasture", bedding: "straw", turnoutHours: 14, horses: 20, weekdays: [2, 5], observerId: "K", wetness: 3, late: true },
  { yardId: "Oddley", gaugeId: "Ossen Weir", gaugeKm: 4.7, ground: "clay pasture, poached tracks", bedding: "deep straw", turnoutHours: 10, horses: 19, weekdays: [3], observerId: "M", wetness: 5, late: false },
  { yardId: "Wetherholt", gaugeId: "Brack Top", gaugeKm: 3.3, ground: "free-draining hill", bedding: "shavings", turnoutHours: 18, horses: 16, weekdays: [1, 5], observerId: "K", wetness: 2, late: false },
  { yardId: "Quernside", gaugeId: "Brack Top", gaugeKm: 8.9, ground: "peaty upland", bedding: "straw", turnoutHours: 24, horses: 14, weekdays: [2, 6], observerId: "M", wetness: 4, late: true },
  { yardId: "Brackloft", gaugeId: "Brack Top", gaugeKm: 1.2, ground: "stone yard and sand paddocks", bedding: "rubber mats", turnoutHours: 8, horses: 10, weekdays: [4], observerId: "M", wetness: 1, late: false },
];
