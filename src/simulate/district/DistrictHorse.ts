/** Build of an animal, which sets its size. */
export type Build = "riding horse" | "cob" | "pony" | "draught cross" | "yearling" | "donkey" | "mule";

/** One animal of the simulated district. */
export interface DistrictHorse {
  readonly horseId: string;
  readonly yardId: string;
  readonly build: Build;
  readonly birthYear: number;
  readonly birthYearEstimated: boolean;
  readonly sex: "mare" | "gelding" | "stallion";
  readonly heightCm: number;
  readonly weightKg: number;
  readonly shod: "bare" | "fronts" | "all";
  readonly use: string;
  /** null: nothing agreed. */
  readonly plannedIntervalDays: number | null;
  /** First day in the district, for those that join; null for those that were there. */
  readonly joinedOn: string | null;
  readonly leftOn: string | null;
  /** Moves to another yard on the day of the calendar. */
  readonly moves: boolean;
  /** Seen once at the start and never again, without having left. */
  readonly lost: boolean;
  /** Often will not give its hind feet. */
  readonly awkwardHinds: boolean;
  /** One fore foot stands steeper than its fellow. */
  readonly unevenFores: boolean;
  /** Days this horse runs over beside its yard. */
  readonly slipDays: number;
  /** Growth of the wall, mm a day. */
  readonly growthMmPerDay: number;
  /** Log odds of thrush against the average horse of its yard. */
  readonly effect: number;
}
