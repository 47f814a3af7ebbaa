import { districtCalendar } from "./districtCalendar.js";
import type { DistrictHorse } from "./DistrictHorse.js";
import type { TextLine } from "./TextLine.js";

/** Lines of horses.csv: one a stay, and the two detached feet that belong to no yard. */
export function horseLines(herd: readonly DistrictHorse[]): TextLine[] {
  const stays = herd.flatMap((horse) => {
    if (!horse.moves) return [stay(horse, horse.yardId, horse.joinedOn, horse.leftOn)];
    const { toYardId, leftOn, joinedOn } = districtCalendar.move;
    return [stay(horse, horse.yardId, horse.joinedOn, leftOn), stay(horse, toYardId, joinedOn, horse.leftOn)];
  });
  const specimens = ["specimen 1", "specimen 2"].map((horse_id) => ({
    cells: { horse_id, type: "detached foot, horse not known" },
  }));
  return [...stays, ...specimens];
}

function stay(horse: DistrictHorse, yardId: string, joinedOn: string | null, leftOn: string | null): TextLine {
  return {
    cells: {
      horse_id: horse.horseId,
      yard_id: yardId,
      species: species(horse.build),
      type: horse.build,
      birth_year: horse.birthYear,
      ...(horse.birthYearEstimated ? { birth_year_estimated: "yes" } : {}),
      sex: horse.sex,
      height_cm: horse.heightCm,
      weight_kg: horse.weightKg,
      shod: horse.shod,
      use: horse.use,
      planned_interval_days: horse.plannedIntervalDays ?? "",
      joined_on: joinedOn ?? "",
      left_on: leftOn ?? "",
    },
  };
}

function species(build: DistrictHorse["build"]): string {
  if (build === "donkey" || build === "mule" || build === "pony") return build;
  return "horse";
}
