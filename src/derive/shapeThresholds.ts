import type { Settings } from "../study/Settings.js";
import type { ShapeFlag } from "./ShapeFlag.js";

/** Where an author drew the line. */
export interface PublishedThreshold {
  readonly threshold: number;
  readonly source: string;
}

/** How a flag is raised, and the thresholds that are found in print. */
export interface ShapeThreshold {
  /** The setting that holds the threshold of a study. */
  readonly setting: keyof Pick<Settings, "contractedFrogIndex" | "underrunGapDeg" | "unevenPairDeg">;
  readonly measure: string;
  readonly rule: ShapeFlag["rule"];
  readonly published: readonly PublishedThreshold[];
}

/** The flags of shape with every published threshold that was found. They conflict, so each study sets its own. */
export const shapeThresholds: Readonly<Record<ShapeFlag["flag"], ShapeThreshold>> = {
  contracted: {
    setting: "contractedFrogIndex",
    measure: "frog width over frog length",
    rule: "below",
    published: [
      {
        threshold: 0.67,
        source: "Turner TA, Objective assessment of hoof balance; Senderska-Plonowska M et al. 2020, as reported",
      },
      { threshold: 0.5, source: "Taylor D, as quoted in a lay article: lower end of a healthy 0.50 to 0.60" },
      { threshold: 0.7, source: "O'Grady SE 2018, Equine thrush: healthy from 0.70" },
    ],
  },
  underrun: {
    setting: "underrunGapDeg",
    measure: "toe angle minus heel angle, degrees",
    rule: "at or above",
    published: [{ threshold: 5, source: "Turner TA, Objective assessment of hoof balance" }],
  },
  uneven: {
    setting: "unevenPairDeg",
    measure: "size of left minus right toe angle, degrees",
    rule: "above",
    published: [
      { threshold: 5, source: "Turner TA, from memory, not checked" },
      { threshold: 1.5, source: "Hobbs SJ et al. 2018, as reported in a blog" },
    ],
  },
};
