import type { InputFile } from "../../study/DataReport.js";
import type { GaugeDay } from "../../study/GaugeDay.js";

/** What one GHCN-Daily file gave. */
export interface WeatherRead {
  readonly records: readonly GaugeDay[];
  readonly input: InputFile;
  /** The gauge of every station of which readings were used. */
  readonly stations: ReadonlyMap<string, string>;
}
