import type { Source } from "./Source.js";

/** One stay of one horse at one yard: a row of `horses.csv`. Missing is null. */
export interface HorseStay extends Source {
  /** Short name or code of the horse. */
  readonly horseId: string;
  /** Yard where the horse stands during this stay. null: yard unknown; left out of yard comparisons. */
  readonly yardId: string | null;
  /** horse, pony, donkey or mule. Any other animal is set aside. Horse thresholds are used for horses and ponies only. null: taken as horse. */
  readonly species: "horse" | "pony" | "donkey" | "mule" | null;
  /** Breed or type, in the keeper's words. null: not recorded. */
  readonly type: string | null;
  /** Year of birth. In year. null: not recorded. */
  readonly birthYear: number | null;
  /** The birth year is a guess. null: taken as known. */
  readonly birthYearEstimated: boolean | null;
  /** Sex of the horse. null: not recorded. */
  readonly sex: "mare" | "gelding" | "stallion" | null;
  /** Height at the withers. In cm. null: not recorded. */
  readonly heightCm: number | null;
  /** Weighed or taped body weight. In kg. null: not recorded. */
  readonly weightKg: number | null;
  /** Usual state: bare, shoes on the front feet only, or on all four. null: not recorded. */
  readonly shod: "bare" | "fronts" | "all" | null;
  /** Work of the horse, in the keeper's words. null: not recorded. */
  readonly use: string | null;
  /** Agreed days between routine visits. In days. null: no plan; the horse is left out of interval keeping. */
  readonly plannedIntervalDays: number | null;
  /** First day of this stay. `YYYY-MM-DD`. null: from the first record on. */
  readonly joinedOn: string | null;
  /** Last day of this stay. `YYYY-MM-DD`. null: still there. */
  readonly leftOn: string | null;
}
