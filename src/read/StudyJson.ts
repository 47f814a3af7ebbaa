import type { GaugeDayRule, Settings } from "../study/Settings.js";

/** A weather file in another format than weather.csv. */
export interface WeatherFile {
  readonly file: string;
  readonly format: "ghcn-by-station";
  /** gauge_id to give its readings; the station identifier when left out. */
  readonly gauge?: string | undefined;
}

/** What `study.json` may say. */
export interface StudyJson {
  readonly name: string;
  /** Which 24 hours a dated rain reading covers; null or left out: not decided yet. */
  readonly gaugeDay?: GaugeDayRule | null | undefined;
  readonly asOf?: string | null | undefined;
  readonly settings?: { readonly [Key in keyof Settings]?: Settings[Key] | undefined } | undefined;
  readonly weather?: readonly WeatherFile[] | undefined;
}
