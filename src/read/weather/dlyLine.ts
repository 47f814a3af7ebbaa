import { dayNumber } from "../../study/dayNumber.js";
import type { GhcnReading } from "./ghcnReading.js";

/** One station, element and month of a GHCN-Daily .dly file. */
export interface DlyLine {
  readonly station: string;
  readonly element: string;
  /** `YYYY-MM`. */
  readonly month: string;
  /** The days that have a value, in order. */
  readonly readings: readonly GhcnReading[];
}

/** What is wrong with a line: the field by its name in readme.txt, null for the whole line, and a clause. */
export interface DlyFault {
  readonly field: string | null;
  readonly found: string;
}

const LONGEST = 269;
const FIRST_VALUE = 21;
const GROUP = 8;
const MISSING = "-9999";

/**
 * Cuts a line of a .dly file at its fixed columns: ID 1-11, YEAR 12-15, MONTH 16-17, ELEMENT 18-21, then for each day from 1 to 31 VALUE (5),
 * MFLAG, QFLAG and SFLAG (1 each). Blanks at the end may be lost.
 *
 * Missing: -9999 is no reading and gives no day. Days beyond the end of the month must be -9999 or blank.
 *
 * A line in which any field is not of its kind is refused as a whole: where one column is shifted, no other can be trusted.
 *
 * Source: NOAA, GHCN-Daily readme.txt section III.
 */
export function dlyLine(line: string): DlyLine | DlyFault {
  const text = line.trimEnd();
  const [station, month, element] = [
    text.slice(0, 11).trimEnd(),
    `${text.slice(11, 15)}-${text.slice(15, 17)}`,
    text.slice(17, 21),
  ];
  if (!/^[A-Za-z0-9_-]+$/.test(station)) return fault("ID", 1, 11, text, "no station identifier");
  if (!/^\d{4}$/.test(text.slice(11, 15))) return fault("YEAR", 12, 15, text, "no year");
  if (dayNumber(`${month}-01`) === null) return fault("MONTH", 16, 17, text, "no month of a year from 1000 on");
  if (!/^[A-Z0-9]{4}$/.test(element)) return fault("ELEMENT", 18, 21, text, "no element of four letters");
  const days = daysIn(month);
  const shortest = FIRST_VALUE + GROUP * (days - 1) + 5;
  if (text.length < shortest || text.length > LONGEST) {
    return { field: null, found: `the line has ${text.length} characters, not ${shortest} to ${LONGEST}` };
  }
  const readings: GhcnReading[] = [];
  for (let day = 1; day <= 31; day++) {
    const start = FIRST_VALUE + GROUP * (day - 1);
    const value = text.slice(start, start + 5);
    const flags = text.slice(start + 5, start + GROUP);
    const blank = value.trim() === "";
    if (day > days) {
      if (!blank && value !== MISSING) return fault(`VALUE${day}`, start + 1, start + 5, text, "on a day that the month lacks");
      if (flags.trim() !== "") return fault(`MFLAG${day}`, start + 6, start + 8, text, "on a day that the month lacks");
      continue;
    }
    if (!/^ *-?\d+$/.test(value))
      return fault(`VALUE${day}`, start + 1, start + 5, text, "no whole number that ends in its column");
    const [measurementFlag = " ", qualityFlag = " ", sourceFlag = " "] = flags;
    if (!/^[A-Z ]$/.test(measurementFlag))
      return fault(`MFLAG${day}`, start + 6, start + 6, text, "neither a letter nor a blank");
    if (!/^[A-Z ]$/.test(qualityFlag)) return fault(`QFLAG${day}`, start + 7, start + 7, text, "neither a letter nor a blank");
    if (!/^[A-Za-z0-9 ]$/.test(sourceFlag)) return fault(`SFLAG${day}`, start + 8, start + 8, text, "no letter, digit or blank");
    if (value === MISSING) continue;
    const date = `${month}-${String(day).padStart(2, "0")}`;
    const trimmed = { measurementFlag: measurementFlag.trim(), qualityFlag: qualityFlag.trim() };
    readings.push({ station, date, element, value: Number(value), ...trimmed });
  }
  return { station, element, month, readings };
}

function fault(field: string, from: number, to: number, text: string, wrong: string): DlyFault {
  const where = from === to ? `character ${from} holds` : `characters ${from} to ${to} hold`;
  return { field, found: `${where} "${text.slice(from - 1, to)}", ${wrong}` };
}

function daysIn(month: string): number {
  return new Date(Date.UTC(Number(month.slice(0, 4)), Number(month.slice(5)), 0)).getUTCDate();
}
