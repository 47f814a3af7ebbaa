/** Left or right, fore or hind, seen from the horse: LF is the near fore. F or H alone for a specimen of unknown side, U for one of unknown end. */
export type Foot = "LF" | "RF" | "LH" | "RH" | "F" | "H" | "U";
