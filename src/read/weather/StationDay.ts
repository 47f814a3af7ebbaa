import type { GhcnReading } from "./ghcnReading.js";

/** A reading with the place it stands. */
export interface PlacedReading extends GhcnReading {
  readonly line: number;
  readonly row: number;
}

/** The readings of one station and day, by element: PRCP, TMIN, TMAX, MDPR, DAPR. */
export interface StationDay {
  readonly station: string;
  readonly date: string;
  readonly readings: Map<string, PlacedReading>;
}
