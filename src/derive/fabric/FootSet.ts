import type { FootVisit } from "../../study/FootVisit.js";

/** The four feet of a horse by name. */
export type StandingFoot = "LF" | "RF" | "LH" | "RH";

/** The rows of one horse written at one time: one day, one stage, one observer. */
export interface FootSet {
  readonly horseId: string;
  readonly visitDate: string;
  readonly stage: FootVisit["stage"];
  readonly observerId: string | null;
  /** The row of each foot; a foot without a row is not there. */
  readonly rows: Readonly<Partial<Record<StandingFoot, FootVisit>>>;
}
