import { dateOfDay } from "../../study/dateOfDay.js";
import { districtCalendar } from "./districtCalendar.js";
import { districtYards } from "./districtYards.js";
import type { DistrictOutlines } from "./districtOutlines.js";
import type { HorseHistory } from "./horseHistory.js";
import type { OutlineSlip } from "./plantOutlineSlips.js";
import type { PlantedEffects } from "./plantedEffects.js";
import { plantedOutlines } from "./plantedOutlines.js";

/** What nobody could know of a real district: the effects, and what became of each horse. */
export interface DistrictTruth {
  readonly about: string;
  readonly seed: string | number;
  readonly effects: PlantedEffects;
  readonly calendar: typeof districtCalendar;
  /** Log odds of each yard against the average yard. */
  readonly yards: readonly { readonly yardId: string; readonly effect: number; readonly runsLate: boolean }[];
  /** Log odds of each horse against the average horse of its yard, and of its feet against the average foot, LF RF LH RH. */
  readonly horses: readonly TrueHorse[];
  readonly outlines: TrueOutlines;
}

/** What the traced outlines were made with. */
export interface TrueOutlines {
  readonly about: string;
  readonly planted: typeof plantedOutlines;
  readonly feet: DistrictOutlines["truth"];
  /** What is wrong with single tracings, found when the outlines are put together. */
  readonly faults: readonly OutlineSlip[];
}

/** One horse as it is. */
export interface TrueHorse {
  readonly horseId: string;
  readonly yardId: string;
  readonly effect: number;
  readonly footEffects: readonly number[];
  readonly hornColours: readonly string[];
  readonly growthMmPerDay: number;
  /** What is special about it: joins, leaves, moves, lost, awkward hinds, uneven fores. */
  readonly special: readonly string[];
  /** Abscesses that broke out at the coronet. */
  readonly bursts: HorseHistory["bursts"];
  /** Day on which a ring left the coronet of all feet; null where there is none. */
  readonly ringOn: string | null;
}

/** The truth behind a simulated district. */
export function districtTruth(
  seed: string | number,
  effects: PlantedEffects,
  yardEffects: ReadonlyMap<string, number>,
  histories: readonly HorseHistory[],
  outlines: Omit<TrueOutlines, "about" | "planted">,
): DistrictTruth {
  return {
    about: "Invented. Effects are log odds of thrush, grade 1 or more, at one foot; see src/simulate/district/plantedEffects.ts.",
    seed,
    effects,
    calendar: districtCalendar,
    yards: districtYards.map(({ yardId, late }) => ({ yardId, effect: yardEffects.get(yardId) ?? 0, runsLate: late })),
    horses: histories.map(({ horse, feet, bursts }) => ({
      horseId: horse.horseId,
      yardId: horse.yardId,
      effect: horse.effect,
      footEffects: feet.map(({ effect }) => effect),
      hornColours: feet.map(({ hornColour }) => hornColour),
      growthMmPerDay: horse.growthMmPerDay,
      special: [
        ...(horse.joinedOn === null ? [] : ["joins"]),
        ...(horse.leftOn === null ? [] : ["leaves"]),
        ...(horse.moves ? ["moves"] : []),
        ...(horse.lost ? ["lost"] : []),
        ...(horse.awkwardHinds ? ["awkward hinds"] : []),
        ...(horse.unevenFores ? ["uneven fores"] : []),
      ],
      bursts,
      ringOn: ringOn(feet[0]?.ringDay ?? null),
    })),
    outlines: {
      about:
        "Invented. roundness is the exponent of the toe, bulge the share by which the outer half is wider; see src/simulate/district/footOutline.ts.",
      planted: plantedOutlines,
      ...outlines,
    },
  };
}

function ringOn(day: number | null): string | null {
  return day === null ? null : dateOfDay(day);
}
