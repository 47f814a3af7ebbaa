import type { Foot } from "../../study/Foot.js";

const words: Readonly<Record<Foot, string>> = {
  LF: "near fore",
  RF: "off fore",
  LH: "near hind",
  RH: "off hind",
  F: "fore, side unknown",
  H: "hind, side unknown",
  U: "end and side unknown",
  LF_specimen: "near fore, specimen",
  RF_specimen: "off fore, specimen",
  LH_specimen: "near hind, specimen",
  RH_specimen: "off hind, specimen",
};

/** A foot as the trade says it: the near side is the horse's left. */
export function footInWords(foot: Foot): string {
  return words[foot];
}
