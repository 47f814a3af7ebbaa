import { indexColumn } from "../../derive/indexColumn.js";
import type { Settings } from "../../study/Settings.js";
import { triedDecays, triedWindowsDays } from "./climateRows.js";

/** Columns of all exposures that are tried, the declared one first. */
export function triedExposures({ primaryExposure }: Pick<Settings, "primaryExposure">): string[] {
  const windows = ["rainMm", "rainAnomalyMm", "wetDays", "dewDays", "surplusDays"].flatMap((kind) =>
    triedWindowsDays.map((days) => `${kind}${days}d`),
  );
  return [...new Set([primaryExposure, ...windows, ...triedDecays.map(indexColumn), "soilStorageMm"])];
}
