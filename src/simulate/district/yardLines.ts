import { districtYards } from "./districtYards.js";
import type { TextLine } from "./TextLine.js";

/** Lines of yards.csv. */
export function yardLines(): TextLine[] {
  return districtYards.map(({ yardId, gaugeId, gaugeKm, ground, bedding, turnoutHours }) => ({
    cells: { yard_id: yardId, gauge_id: gaugeId, gauge_km: gaugeKm, ground, bedding, turnout_hours: turnoutHours },
  }));
}
