import type { FootSet } from "../../derive/fabric/FootSet.js";
import type { FootTable } from "../../derive/fabric/FootTable.js";
import { tableOfFeet } from "../../derive/fabric/tableOfFeet.js";
import { betaCumulative } from "../../estimate/numeric/betaCumulative.js";
import { grouped } from "../../study/grouped.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";
import { smallChance } from "./alike/smallChance.js";
import { fabricIssue } from "./fabricIssue.js";
import { falseAlarmShare } from "./falseAlarmShare.js";

/** In so many horses most must be wider behind: a fair coin is no horse, but a herd may hold a few that are. Common practice, no source. */
const SHARE = 0.75;

interface HorseWidths {
  readonly observerId: string | null;
  readonly horseId: string;
  readonly set: FootSet;
  sum: number;
  count: number;
}

/**
 * Observers whose horses are mostly wider behind than in front: front and hind were written the wrong way round throughout, which the horses' own
 * histories cannot show.
 *
 * Method: for each horse of an observer, the mean width of a fore foot less that of the hind foot on the same side; a horse counts once,
 * however often it was seen. Fore feet are wider; when three quarters of the horses or more have it the other way round, and more than a fair
 * coin would give among all observers (exact sign test, one-sided, `falseAlarmShare`; so eight horses at least), it is told.
 *
 * Missing: horses whose fore and hind feet were not measured, or are equal, do not count.
 *
 * Source: width is the dimension in which fore and hind differ most; hind narrower in horses, mules and donkeys (abstracts of two morphometric
 * studies, read as reported; no table was read).
 */
export function reversedEnds({ visits }: Pick<Study, "visits">, table: FootTable = tableOfFeet(visits)): Issue[] {
  const observers = [...grouped(horsesOf(table), ({ observerId }) => observerId)];
  return observers.flatMap(([observerId, horses]) => {
    const means = horses.flatMap(({ sum, count }) => (sum === 0 ? [] : [sum / count]));
    const reversed = means.filter((mean) => mean < 0).length;
    const chance = reversed === 0 ? 1 : betaCumulative(0.5, reversed, means.length - reversed + 1);
    const [first] = Object.values(horses[0]?.set.rows ?? {});
    if (chance * observers.length > falseAlarmShare || reversed < SHARE * means.length || first === undefined) return [];
    const mean = means.reduce((sum, value) => sum + value, 0) / means.length;
    return [
      fabricIssue({
        file: first.file,
        line: first.line,
        column: "foot",
        code: "ends_reversed_throughout",
        found:
          `${observerId === null ? "where no observer is named" : `where ${observerId} is the observer`}, ${reversed} of ${means.length} horses are ` +
          `wider behind than in front, by ${(-mean).toFixed(1)} mm in the mean of all; by chance that comes ${smallChance(chance)} times`,
        hint: "Ask what this observer's words for the feet mean; fore feet are wider as a rule.",
      }),
    ];
  });
}

/** Sum of the differences in width for each horse of each observer. */
function horsesOf(table: FootTable): HorseWidths[] {
  const ends = [
    ["LF", "LH"],
    ["RF", "RH"],
  ] as const;
  const horses: HorseWidths[] = [];
  let ofHorse: HorseWidths[] = [];
  table.sets.forEach((set) => {
    const { horseId, observerId } = set;
    if (ofHorse[0]?.horseId !== horseId) ofHorse = [];
    for (const [fore, hind] of ends) {
      const [inFront, behind] = [set.rows[fore]?.hoofWidthMm ?? null, set.rows[hind]?.hoofWidthMm ?? null];
      if (inFront === null || behind === null) continue;
      let horse = ofHorse.find((each) => each.observerId === observerId);
      if (horse === undefined) {
        horse = { observerId, horseId, set, sum: 0, count: 0 };
        ofHorse.push(horse);
        horses.push(horse);
      }
      horse.sum += inFront - behind;
      horse.count += 1;
    }
  });
  return horses;
}
