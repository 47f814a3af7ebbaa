import type { Source } from "./Source.js";

/** One day of one gauge: a row of `weather.csv`, or built from GHCN-Daily files. Missing is null. */
export interface GaugeDay extends Source {
  /** The gauge, as named in yards.csv. */
  readonly gaugeId: string;
  /** Date written beside the reading; study.json says which 24 hours it covers. `YYYY-MM-DD`. */
  readonly date: string;
  /** Rain of the gauge day. In mm. null: no reading; never zero. */
  readonly rainMm: number | null;
  /** trace: too little to measure, rain 0. accumulated: total of several days, used for none of them. missing: no reading. null: an ordinary reading. */
  readonly flag: "trace" | "accumulated" | "missing" | null;
  /** Lowest air temperature of the day. In degC. null: not recorded. */
  readonly tempMinC: number | null;
  /** Highest air temperature of the day. In degC. null: not recorded. */
  readonly tempMaxC: number | null;
  /** Mean relative humidity of the day. In %. null: not recorded. */
  readonly humidityPct: number | null;
  /** Mean dew point of the day. In degC. null: not recorded. */
  readonly dewPointC: number | null;
}
