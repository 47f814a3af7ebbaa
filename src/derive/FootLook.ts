import type { Foot } from "../study/Foot.js";
import type { FootVisit } from "../study/FootVisit.js";
import type { FootCase } from "./FootCase.js";

/** One foot on one day: all its rows of that day, and the thrush grade that counts. */
export interface FootLook {
  readonly foot: Foot;
  readonly state: "seen" | "not_seen" | "not_said";
  readonly notExaminedReason: string | null;
  /** The grade that counts for that day; see `thrushCases`. */
  readonly grade: number | null;
  readonly thrushSite: FootCase["thrushSite"];
  readonly rows: readonly FootVisit[];
}
