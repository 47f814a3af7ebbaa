/** Where a gauge stands, from `study.json` or a list of stations. Missing is null. */
export interface Gauge {
  /** The gauge, as named in yards.csv and weather.csv. */
  readonly gaugeId: string;
  /** Degrees north of the equator, south negative. */
  readonly latitudeDeg: number;
  /** Degrees east of Greenwich, west negative. null: not known. */
  readonly longitudeDeg: number | null;
  /** Height above the sea, m. null: not known. */
  readonly elevationM: number | null;
}
