/**
 * Left or right, fore or hind, seen from the horse: LF is the near fore. A specimen, that is a foot without a live horse, is F or H when its side is unknown, U when its
 * end is, and `LF_specimen` and the like when both are known: it takes part in the study of shape and belongs to no horse of a herd.
 */
export type Foot = "LF" | "RF" | "LH" | "RH" | "F" | "H" | "U" | `${"L" | "R"}${"F" | "H"}_specimen`;
