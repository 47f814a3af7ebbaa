import type { FootVisit } from "../../study/FootVisit.js";
import { grouped } from "../../study/grouped.js";
import type { HorseStay } from "../../study/HorseStay.js";
import type { Study } from "../../study/Study.js";
import { animalWords } from "./animalWords.js";
import type { NonEquineDay } from "./NonEquineDay.js";
import { repeatsSetAside } from "./repeatsSetAside.js";

/** So many signs set an animal's day aside, one of them a plain one; one alone has an innocent reading. Common practice, no source. */
const SIGNS_NEEDED = 2;
const FEET_OF_A_HORSE = 4;
/** A claw is half a foot: narrower than this for its length. The hard limit of a horse's foot is 0.55, its usual range ends at 0.80. Common practice, no source. */
const SINGLE_CLAW_INDEX = 0.65;
/** 500 kg do not stand on feet this narrow; other weights in proportion to the cube root. Common practice, no source. */
const NARROW = { widthMm: 75, weightKg: 500 };
/** From this share of measured rows on, the frog is taken to be looked at as a rule, and a blank one says something. */
const FROG_USUAL = 0.5;
/** Country code and 10 to 12 digits, as on ear tags of cattle (from memory). Numbers of horses have 15 characters. */
const HERD_TAG = /^[A-Z]{2}[\s-]?(?:\d[\s-]?){9,11}\d$/i;

/**
 * The days on which the rows of an animal do not look like a horse's feet, by two signs or more. Plain signs, of which one is needed: more rows
 * than a horse has feet, or feet told apart as inner and outer claws; words of cloven animals in a note; such words in type or use; width over
 * length below 0.65; feet far too narrow for the weight. Further signs: the number of a herd tag, as some horses have too; and, in records that
 * usually say something of the frog, walls measured on an animal whose frogs are never mentioned.
 *
 * Missing: a sign that cannot be judged is no sign.
 *
 * Source: cloven feet have no frog, and eight digits an animal; thresholds common practice, no source.
 */
export function nonEquineDays(study: Pick<Study, "visits" | "horses" | "report">): NonEquineDay[] {
  const stays = grouped(study.horses, ({ horseId }) => horseId);
  const repeats = repeatsSetAside(study.report);
  let [measured, withFrog] = [0, 0];
  for (const row of study.visits) {
    if (!wallMeasured(row)) continue;
    measured += 1;
    if (!frogBlank(row)) withFrog += 1;
  }
  const frogUsual = withFrog >= FROG_USUAL * measured;
  return [...grouped(study.visits, ({ horseId }) => horseId)].flatMap(([horseId, ofAnimal]) => {
    const stay = stays.get(horseId) ?? [];
    const kind = kindOf(stay);
    const noFrog = frogUsual && ofAnimal.every(frogBlank);
    return [...grouped(ofAnimal, ({ visitDate }) => visitDate)].flatMap(([visitDate, rows]): NonEquineDay[] => {
      const plain = [digits(rows, repeats), word(rows), kind, claws(rows), narrow(rows, stay)].filter((sign) => sign !== null);
      if (plain.length === 0) return [];
      const further = [herdTag(horseId), noFrog ? wallsAlone(rows) : null].filter((sign) => sign !== null);
      const signs = [...plain, ...further];
      return signs.length < SIGNS_NEEDED ? [] : [{ horseId, visitDate, rows, signs }];
    });
  });
}

function digits(rows: readonly FootVisit[], repeats: ReadonlyMap<string, number>): string | null {
  // Nearly every day: four rows or fewer, and no remark that could name a claw.
  if (rows.length + repeats.size <= FEET_OF_A_HORSE && rows.every(({ note }) => note === null)) return null;
  const feet = rows.filter(({ foot }) => foot.length === 2);
  const looks = [...grouped(feet, ({ stage, observerId }) => `${stage ?? ""}\n${observerId ?? ""}`).values()];
  // In a file with one row a visit several feet stand on one line.
  const repeated = (look: readonly FootVisit[]) =>
    [...new Set(look.map(({ file, line }) => `${file}\n${line}`))].reduce((sum, place) => sum + (repeats.get(place) ?? 0), 0);
  const counts = looks.map((look) => look.length + repeated(look));
  const most = Math.max(0, ...counts);
  if (most > FEET_OF_A_HORSE) return `${most} rows of one day where a horse has four feet`;
  for (const ofFoot of grouped(feet, ({ foot }) => foot).values()) {
    const named = new Set(ofFoot.map(({ note }) => digitOf(note)).filter((digit) => digit !== null));
    if (named.size > 1) return `one foot comes as ${[...named].join(" and ")}`;
  }
  return null;
}

function digitOf(note: string | null): string | null {
  return /\b(?:inner|outer|medial|lateral) (?:claw|digit|toe)\b/i.exec(note ?? "")?.[0].toLowerCase() ?? null;
}

function herdTag(horseId: string): string | null {
  return HERD_TAG.test(horseId) ? "its name is written like a herd tag" : null;
}

function word(rows: readonly FootVisit[]): string | null {
  for (const { note, notExaminedReason } of rows) {
    const found = animalWords(note, "claw") ?? animalWords(notExaminedReason, "claw");
    if (found !== null) return `the note says "${found}"`;
  }
  return null;
}

function kindOf(stays: readonly HorseStay[]): string | null {
  for (const { type, use } of stays) {
    const found = animalWords(type, "kind") ?? animalWords(use, "kind");
    if (found !== null) return `type or use in horses.csv says "${found}"`;
  }
  return null;
}

function wallMeasured({ hoofWidthMm, hoofLengthMm, toeLengthMm }: FootVisit): boolean {
  return Number(hoofWidthMm !== null) + Number(hoofLengthMm !== null) + Number(toeLengthMm !== null) >= 2;
}

function frogBlank(row: FootVisit): boolean {
  return (row.thrushGrade ?? row.thrushSite ?? row.cleftDepthMm ?? row.frogWidthMm ?? row.frogLengthMm) === null;
}

function wallsAlone(rows: readonly FootVisit[]): string | null {
  const walls = rows.filter(wallMeasured).length;
  return walls < 2 ? null : `the walls of ${walls} feet are measured and no frog is ever mentioned`;
}

function claws(rows: readonly FootVisit[]): string | null {
  let [known, low, lowest] = [0, 0, Infinity];
  for (const { hoofWidthMm, hoofLengthMm } of rows) {
    if (hoofWidthMm === null || hoofLengthMm === null) continue;
    const index = hoofWidthMm / hoofLengthMm;
    known += 1;
    if (index < SINGLE_CLAW_INDEX) low += 1;
    lowest = Math.min(lowest, index);
  }
  if (low === 0 || low * 2 < known) return null;
  return `width over length is ${lowest.toFixed(2)}, below ${SINGLE_CLAW_INDEX}`;
}

function narrow(rows: readonly FootVisit[], stays: readonly HorseStay[]): string | null {
  const weightKg = stays.find((stay) => stay.weightKg !== null)?.weightKg ?? null;
  if (weightKg === null) return null;
  const widths = rows.map(({ hoofWidthMm }) => hoofWidthMm).filter((width) => width !== null);
  if (widths.length === 0) return null;
  const widest = Math.max(...widths);
  const least = NARROW.widthMm * Math.cbrt(weightKg / NARROW.weightKg);
  return widest < least ? `the widest foot is ${widest} mm at ${weightKg} kg` : null;
}
