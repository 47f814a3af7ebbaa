import { fabricIssue } from "./fabricIssue.js";
import { footContrast } from "../../derive/fabric/footContrast.js";
import { fabricMeasures } from "../../derive/fabric/fabricMeasures.js";
import type { FootSet } from "../../derive/fabric/FootSet.js";
import { footSets } from "../../derive/fabric/footSets.js";
import { betaCumulative } from "../../estimate/numeric/betaCumulative.js";
import { grouped } from "../../study/grouped.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";
import { smallChance } from "./alike/smallChance.js";

/** Chance of so many horses that are wider behind, were either way as likely. Common practice, no source. */
const CHANCE = 0.001;

/**
 * Observers whose horses are mostly wider behind than in front: front and hind were written the wrong way round throughout, which the horses' own
 * histories cannot show.
 *
 * Method: for each horse of an observer, the mean width of a fore foot less that of the hind foot on the same side. Fore feet are wider; when most
 * horses have it the other way round, more often than a fair coin would (exact sign test, one-sided, 0.001, so eleven horses at least), it is told.
 *
 * Missing: horses whose fore and hind feet were not measured, or are equal, do not count.
 *
 * Source: width is the dimension in which fore and hind differ most; hind narrower in horses, mules and donkeys (abstracts of two morphometric
 * studies, read as reported; no table was read).
 */
export function reversedEnds({ visits }: Pick<Study, "visits">, sets: readonly FootSet[] = footSets(visits)): Issue[] {
  const width = fabricMeasures.findIndex(({ field }) => field === "hoofWidthMm");
  return [...grouped(sets, ({ observerId }) => observerId)].flatMap(([observerId, sets]) => {
    const means = [...grouped(sets, ({ horseId }) => horseId).values()].flatMap((ofHorse) => {
      const differences = ofHorse.flatMap((set) => widthsOf(set, width));
      const sum = differences.reduce((total, value) => total + value, 0);
      return differences.length === 0 || sum === 0 ? [] : [sum / differences.length];
    });
    const reversed = means.filter((mean) => mean < 0).length;
    const chance = reversed === 0 ? 1 : betaCumulative(0.5, reversed, means.length - reversed + 1);
    const [first] = Object.values(sets[0]?.rows ?? {});
    if (chance > CHANCE || first === undefined) return [];
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

function widthsOf(set: FootSet, width: number): number[] {
  const pairs = [footContrast(set, ["LF", "LH"]), footContrast(set, ["RF", "RH"])];
  return pairs.flatMap((contrast) => contrast?.[width] ?? []);
}
