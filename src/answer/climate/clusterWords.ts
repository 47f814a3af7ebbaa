import type { ExposureEffect } from "../../estimate/ExposureEffect.js";
import { counted } from "../words/counted.js";

/** One and many; a horse that has changed yards counts once in each. */
const nouns: Readonly<Record<string, readonly [string, string]>> = {
  horseId: ["horse in its yard", "horses in their yards"],
  yardId: ["yard", "yards"],
};

/** The groups whose likeness the limits allow for: `105 horses in their yards`; `nothing alike` where each row counts by itself, null without an effect. */
export function clusterWords({ clusteredBy, clusters, refused }: ExposureEffect): string | null {
  if (refused !== null) return null;
  if (clusteredBy === null || clusters === null) return "nothing alike";
  const noun = nouns[clusteredBy];
  return noun === undefined ? `${clusters} of ${clusteredBy}` : counted(clusters, ...noun);
}
