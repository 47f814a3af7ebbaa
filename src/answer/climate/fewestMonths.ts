/** Fewest months of the year with visits, so that season can be told from what goes with it; common practice, no source. */
export const fewestMonths = 8;
