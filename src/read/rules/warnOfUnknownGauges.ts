import type { GaugeDay } from "../../study/GaugeDay.js";
import type { Yard } from "../../study/Yard.js";
import type { IssueLog } from "../report/issueLog.js";
import { messages } from "../report/messages.js";
import { nearestKnown } from "./nearestKnown.js";

/** Warns of every yard whose gauge has no readings, when there are readings at all. */
export function warnOfUnknownGauges(yards: readonly Yard[], weather: readonly GaugeDay[], log: IssueLog): void {
  const gauges = new Set(weather.map(({ gaugeId }) => gaugeId));
  if (gauges.size === 0) return;
  const nearest = nearestKnown(gauges);
  for (const { gaugeId, file, line } of yards) {
    if (gaugeId === null || gauges.has(gaugeId)) continue;
    log.add(messages.unknownGauge(gaugeId, nearest(gaugeId)), { file, line, row: null, column: "gauge_id", value: gaugeId });
  }
}
