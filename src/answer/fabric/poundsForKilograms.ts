import { fabricIssue } from "./fabricIssue.js";
import type { HorseStay } from "../../study/HorseStay.js";
import { grouped } from "../../study/grouped.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";

const POUNDS = 2.20462;
/**
 * Weight over the cube of the height at the withers, kg a cubic metre: riding horses, cobs, ponies and donkeys lie between these. Common
 * practice, no source.
 */
const USUAL = [85, 210] as const;
/** So many horses of a yard, and this share of them. Common practice, no source. */
const FEWEST = 4;
const SHARE = 0.75;

/**
 * Yards whose horses weigh about twice what their height allows, and the right weight once the number is taken as pounds.
 *
 * Missing: horses without weight or height are not judged; the latest stay of a horse at the yard counts.
 *
 * Source: common practice, no source.
 */
export function poundsForKilograms({ horses }: Pick<Study, "horses">): Issue[] {
  return [...grouped(horses, ({ yardId }) => yardId)].flatMap(([yardId, stays]) => {
    const measured = [...new Map(stays.map((stay) => [stay.horseId, stay])).values()].flatMap((stay) => built(stay) ?? []);
    const heavy = measured.filter(({ build }) => build > USUAL[1] && inUsual(build / POUNDS));
    const [first] = heavy;
    if (first === undefined || heavy.length < FEWEST || heavy.length < SHARE * measured.length) return [];
    const { stay, build } = first;
    return [
      fabricIssue({
        file: stay.file,
        line: stay.line,
        column: "weight_kg",
        code: "unit_run",
        found:
          `${heavy.length} of ${measured.length} horses ${yardId === null ? "without a yard" : `of ${yardId}`} have weights that look like ` +
          `pounds, such as ${stay.weightKg ?? ""} at ${stay.heightCm ?? ""} cm (${Math.round(build)} kg a cubic metre of height, where ` +
          `${USUAL.join(" to ")} are usual); nothing was converted`,
        hint: "If it is so, multiply them by 0.4536.",
      }),
    ];
  });
}

function inUsual(build: number): boolean {
  return build >= USUAL[0] && build <= USUAL[1];
}

function built(stay: HorseStay): { readonly stay: HorseStay; readonly build: number } | null {
  const { weightKg, heightCm } = stay;
  return weightKg === null || heightCm === null ? null : { stay, build: weightKg / (heightCm / 100) ** 3 };
}
