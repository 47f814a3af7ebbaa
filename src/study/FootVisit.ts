import type { Foot } from "./Foot.js";
import type { Source } from "./Source.js";

/** One foot at one visit: a row of `visits.csv`. Missing is null. */
export interface FootVisit extends Source {
  /** Calendar day of the visit. `YYYY-MM-DD`. */
  readonly visitDate: string;
  /** The horse, as named in horses.csv. */
  readonly horseId: string;
  /** Left or right, fore or hind, seen from the horse: LF is the near fore. F or H alone for a specimen of unknown side, U for one of unknown end, LF_specimen and the like for one of known side: a foot without a live horse. */
  readonly foot: Foot;
  /** Whether measures were taken before or after trimming; single when only one set was taken. null: unknown; shape measures are kept apart from both stages. */
  readonly stage: "before_trim" | "after_trim" | "single" | null;
  /** Why the visit was made. Only routine visits reset the interval clock. null: unknown; counted as routine and said so. */
  readonly reason: "routine" | "lost_shoe" | "lame" | "follow_up" | "new_horse" | "other" | null;
  /** Who graded and measured, as a code. null: not recorded; never read as sound or zero. */
  readonly observerId: string | null;
  /** Whether this foot was looked at. null: taken as examined when any finding is recorded. */
  readonly examined: boolean | null;
  /** Why this foot was not looked at. null: no reason given. */
  readonly notExaminedReason: string | null;
  /** Project scale 0-3: 0 firm dry frog, open clefts; 1 smell or black matter on the surface of one cleft; 2 ragged or undermined horn, or a deep cleft, or two clefts; 3 to the quick. null: not recorded; never read as sound or zero. */
  readonly thrushGrade: number | null;
  /** Which clefts of the frog are affected. null: not recorded; never read as sound or zero. */
  readonly thrushSite: readonly ("central_sulcus" | "medial_groove" | "lateral_groove")[] | null;
  /** Depth of the deepest cleft of the frog. In mm. null: not recorded; never read as sound or zero. */
  readonly cleftDepthMm: number | null;
  /** Widest part of the bare ground surface, at right angles to the midline. In mm. null: not recorded; never read as sound or zero. */
  readonly hoofWidthMm: number | null;
  /** Tip of the toe to the line across the heel buttresses. In mm. null: not recorded; never read as sound or zero. */
  readonly hoofLengthMm: number | null;
  /** Hairline to ground at mid-toe, along the wall. In mm. null: not recorded; never read as sound or zero. */
  readonly toeLengthMm: number | null;
  /** Hairline to ground at the heel, vertical. In mm. null: not recorded; never read as sound or zero. */
  readonly heelHeightMm: number | null;
  /** Toe wall to ground plane. In deg. null: not recorded; never read as sound or zero. */
  readonly toeAngleDeg: number | null;
  /** Heel tubules to ground plane. In deg. null: not recorded; never read as sound or zero. */
  readonly heelAngleDeg: number | null;
  /** Widest part of the frog, at its base. In mm. null: not recorded; never read as sound or zero. */
  readonly frogWidthMm: number | null;
  /** Apex to base of the frog. In mm. null: not recorded; never read as sound or zero. */
  readonly frogLengthMm: number | null;
  /** Inner quarter wall to ground plane. In deg. null: not recorded; never read as sound or zero. */
  readonly medialWallAngleDeg: number | null;
  /** Outer quarter wall to ground plane. In deg. null: not recorded; never read as sound or zero. */
  readonly lateralWallAngleDeg: number | null;
  /** Where the wall bends away from straight at the ground. null: not recorded; never read as sound or zero. */
  readonly flareSite: readonly ("toe" | "medial" | "lateral")[] | null;
  /** State of the bars. null: not recorded; never read as sound or zero. */
  readonly bars: "level" | "overgrown" | "folded" | null;
  /** State of the white line. null: not recorded; never read as sound or zero. */
  readonly whiteLine: "tight" | "stretched" | "separated" | null;
  /** Where the wall is cracked. null: not recorded; never read as sound or zero. */
  readonly crackSite: readonly ("toe" | "quarter" | "heel")[] | null;
  /** Where the crack starts. null: not recorded; never read as sound or zero. */
  readonly crackFrom: "ground" | "coronet" | null;
  /** Length of the longest crack along the wall. In mm. null: not recorded; never read as sound or zero. */
  readonly crackLengthMm: number | null;
  /** What the measured mark on the wall is. null: not recorded; never read as sound or zero. */
  readonly markKind: "abscess_track" | "ring" | "crack" | null;
  /** Hairline to the mark, along the wall. In mm. null: not recorded; never read as sound or zero. */
  readonly markBelowCoronetMm: number | null;
  /** An abscess is present at this visit. null: not recorded; never read as sound or zero. */
  readonly abscess: boolean | null;
  /** Colour of the wall of this foot. null: not recorded; never read as sound or zero. */
  readonly hornColour: "dark" | "light" | "striped" | null;
  /** State of the shoe on arrival. null: not recorded; never read as sound or zero. */
  readonly shoeState: "bare" | "tight" | "sprung" | "lost" | "worn" | null;
  /** What was done to this foot. null: not recorded; never read as sound or zero. */
  readonly workDone: "trim" | "shoe" | "reset" | "none" | null;
  /** The frog or wall was dressed or disinfected in the seven days before. null: not recorded; never read as sound or zero. */
  readonly surfaceTreated7d: boolean | null;
  /** A vet is already seeing this foot. null: not recorded; never read as sound or zero. */
  readonly vetInvolved: boolean | null;
  /** Days to the next visit, agreed at this one. In days. null: the horse's planned interval is used. */
  readonly nextIntervalDays: number | null;
  /** Free text; may name people, so it leaves no page unless asked for. null: no note. */
  readonly note: string | null;
}
