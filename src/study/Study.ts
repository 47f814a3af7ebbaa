import type { DataReport } from "./DataReport.js";
import type { FootVisit } from "./FootVisit.js";
import type { Gauge } from "./Gauge.js";
import type { GaugeDay } from "./GaugeDay.js";
import type { HorseStay } from "./HorseStay.js";
import type { OutlinePoint } from "./OutlinePoint.js";
import type { Settings } from "./Settings.js";
import type { Yard } from "./Yard.js";
import type { YardChange } from "./YardChange.js";

/** Everything accepted from a study folder, and the report of what was not. */
export interface Study {
  readonly name: string;
  readonly settings: Settings;
  readonly visits: readonly FootVisit[];
  readonly horses: readonly HorseStay[];
  readonly yards: readonly Yard[];
  readonly changes: readonly YardChange[];
  readonly weather: readonly GaugeDay[];
  /** Where gauges stand, of those of which it is known. */
  readonly gauges?: readonly Gauge[];
  readonly outlines: readonly OutlinePoint[];
  readonly report: DataReport;
}
