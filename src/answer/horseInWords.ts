import { asOfDate } from "../derive/asOfDate.js";
import { stayAt } from "../derive/stayAt.js";
import type { HorseStay } from "../study/HorseStay.js";
import type { Study } from "../study/Study.js";
import { longDate } from "./words/longDate.js";

const shoeing = { bare: "usually bare", fronts: "usually shod in front", all: "usually shod all round" } as const;

/** Who a horse is, in a line: species, type, sex, birth, size, shoeing, work, and the yard where it stands on the day of the review. */
export function horseInWords(study: Study, horseId: string): string {
  const stays = study.horses.filter((stay) => stay.horseId === horseId);
  const asOf = asOfDate(study);
  const now = asOf === null ? null : stayAt(stays, horseId, asOf);
  const stay = now ?? stays.at(-1);
  if (stay === undefined) return "Nothing but its visits has been recorded of this horse.";
  const said = [
    stay.species,
    stay.type,
    stay.sex,
    stay.birthYear === null ? null : `born ${stay.birthYear}${stay.birthYearEstimated === true ? " (estimated)" : ""}`,
    stay.heightCm === null ? null : `${stay.heightCm} cm`,
    stay.weightKg === null ? null : `${stay.weightKg} kg`,
    stay.shod === null ? null : shoeing[stay.shod],
    stay.use,
  ].filter((text) => text !== null);
  const words = [...new Set(said)].join(", ");
  return [words === "" ? "" : `${words.slice(0, 1).toUpperCase()}${words.slice(1)}.`, placeOf(stay, now !== null)]
    .filter((text) => text !== "")
    .join(" ");
}

function placeOf(stay: HorseStay, there: boolean): string {
  if (!there) return stay.leftOn === null ? "" : `Left on ${longDate(stay.leftOn)}.`;
  if (stay.yardId === null) return "";
  return `At ${stay.yardId}${stay.joinedOn === null ? "" : ` since ${longDate(stay.joinedOn)}`}.`;
}
