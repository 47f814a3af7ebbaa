/** Days and events of the simulated district that are fixed, not drawn. */
export const districtCalendar = {
  /** Weather is known from here on, early enough for the antecedent index to warm up. */
  weatherFrom: "2024-10-15",
  firstVisit: "2025-01-06",
  /** Day of the review and last day of everything. */
  lastDay: "2026-02-28",
  /** No farrier between these days, both included, of each year. */
  closedFrom: "12-24",
  closedTo: "01-01",
  bedding: { yardId: "Oddley", changedOn: "2025-10-06", what: "deep straw to rubber mats with shavings on top" },
  move: { fromYardId: "Sallowmere", toYardId: "Brackloft", leftOn: "2025-08-17", joinedOn: "2025-08-18" },
  /** The second gauge lay idle on the first three days; the reading of the last one holds all four. */
  idleGauge: { gaugeId: "Brack Top", from: "2025-07-18", readOn: "2025-07-21" },
  /** Share of the horses that get a ring around their feet, and the days between which it leaves the coronet. */
  rings: { share: 0.25, from: "2025-02-01", to: "2025-08-31" },
  /** Routine visits at that yard between these days, both included, were graded by both observers. */
  doubleScoring: [
    { yardId: "Sallowmere", from: "2025-03-03", to: "2025-03-20" },
    { yardId: "Sallowmere", from: "2025-11-03", to: "2025-11-20" },
  ],
} as const;
