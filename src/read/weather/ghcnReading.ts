import { dayNumber } from "../../study/dayNumber.js";

/** One element of one station and day of a GHCN-Daily by-station file. */
export interface GhcnReading {
  readonly station: string;
  /** `YYYY-MM-DD`. */
  readonly date: string;
  readonly element: string;
  readonly value: number;
  readonly measurementFlag: string;
  readonly qualityFlag: string;
}

const FEWEST_CELLS = 4;
const MOST_CELLS = 8;

/**
 * A reading from the cells of a row: station, yyyymmdd, element, value, M-FLAG, Q-FLAG, S-FLAG, OBS-TIME; trailing cells may be left out.
 * Returns what is wrong as a clause when the row is not of that form. Source: NOAA, GHCN-Daily readme-by_station.txt.
 */
export function ghcnReading(cells: readonly string[]): GhcnReading | string {
  if (cells.length < FEWEST_CELLS || cells.length > MOST_CELLS) return `the row has ${cells.length} cells, not 4 to 8`;
  const [station = "", day = "", element = "", value = "", measurementFlag = "", qualityFlag = ""] = cells.map((cell) =>
    cell.trim(),
  );
  const parts = /^(\d{4})(\d{2})(\d{2})$/.exec(day);
  const date = parts === null ? "" : parts.slice(1).join("-");
  if (!/^[A-Za-z0-9_-]{1,11}$/.test(station)) return `"${station.slice(0, 20)}" is not a station identifier`;
  if (dayNumber(date) === null) return `"${day.slice(0, 20)}" is not a day yyyymmdd`;
  if (!/^[A-Z0-9]{4}$/.test(element)) return `"${element.slice(0, 20)}" is not an element of four letters`;
  if (!/^-?\d{1,5}$/.test(value)) return `"${value.slice(0, 20)}" is not a whole number`;
  return { station, date, element, value: Number(value), measurementFlag, qualityFlag };
}
