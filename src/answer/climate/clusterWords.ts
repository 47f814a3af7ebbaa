import type { ExposureEffect } from "../../estimate/ExposureEffect.js";
import { counted } from "../words/counted.js";

const nouns: Readonly<Record<string, string>> = { horseId: "horse", yardId: "yard" };

/** The groups whose likeness the limits allow for: `105 horses`; `nothing alike` where each row counts by itself, null without an effect. */
export function clusterWords({ clusteredBy, clusters, refused }: ExposureEffect): string | null {
  if (refused !== null) return null;
  if (clusteredBy === null || clusters === null) return "nothing alike";
  const noun = nouns[clusteredBy];
  return noun === undefined ? `${clusters} of ${clusteredBy}` : counted(clusters, noun);
}
