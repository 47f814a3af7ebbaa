import type { GaugeDayRule, Settings } from "../study/Settings.js";

import type { FilesMapping } from "./mapping/FileMapping.js";

/** A weather file in another format than weather.csv: GHCN-Daily as comma-separated rows of one reading, or as fixed-width lines of one month. @private */
export interface WeatherFile {
  readonly file: string;
  readonly format: "ghcn-by-station" | "ghcn-dly";
  /** gauge_id to give the readings of the one station in it; the station identifier when left out. */
  readonly gauge?: string | undefined;
  /** gauge_id by station identifier, for a file of several stations; stations that are not named are passed over. */
  readonly stations?: Readonly<Record<string, string>> | undefined;
}

/** Where a gauge stands, as `study.json` may say it. */
export interface GaugeEntry {
  readonly gauge: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg?: number | undefined;
  readonly elevationM?: number | undefined;
}

/** What `study.json` may say. */
export interface StudyJson {
  /** Where an editor finds the JSON Schema of this file; of no meaning here. */
  readonly $schema?: string | undefined;
  readonly name: string;
  /** Which 24 hours a dated rain reading covers; null or left out: not decided yet. */
  readonly gaugeDay?: GaugeDayRule | null | undefined;
  readonly asOf?: string | null | undefined;
  readonly settings?: { readonly [Key in keyof Settings]?: Settings[Key] | undefined } | undefined;
  /** The files of each table, where they are not the usual ones read as they are. */
  readonly files?: FilesMapping | undefined;
  readonly weather?: readonly WeatherFile[] | undefined;
  readonly gauges?: readonly GaugeEntry[] | undefined;
  /** The list of GHCN-Daily stations (ghcnd-stations.txt), from which the gauges read from such files get their place. */
  readonly stationList?: string | undefined;
}
