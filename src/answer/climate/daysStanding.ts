import type { LagProfile } from "../../estimate/lagProfile.js";

/** Days before a visit, one after the other, on which the odds stand above 1 with the limits of the whole curve. */
export interface StandingDays {
  readonly from: number;
  readonly to: number;
  /** The day of the highest odds ratio among them; the earliest of equals. */
  readonly most: LagProfile["days"][number];
}

/** The runs of days that stand out, in the order of the days; none when the test that no day matters does not reject at the level of the profile. */
export function daysStanding({ days, anyDay, level }: Pick<LagProfile, "days" | "anyDay" | "level">): StandingDays[] {
  if (anyDay.p >= 1 - level) return [];
  const standing = days.filter(({ lowerTogether }) => lowerTogether > 1).sort((a, b) => a.lagDays - b.lagDays);
  const starts = standing.flatMap(({ lagDays }, place) => (standing[place - 1]?.lagDays === lagDays - 1 ? [] : [place]));
  return starts.map((start, place) => {
    const run = standing.slice(start, starts[place + 1]);
    const most = run.reduce((highest, day) => (day.estimate > highest.estimate ? day : highest));
    return { from: Math.min(...run.map(({ lagDays }) => lagDays)), to: Math.max(...run.map(({ lagDays }) => lagDays)), most };
  });
}
