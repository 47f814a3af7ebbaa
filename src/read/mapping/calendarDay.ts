import { dayNumber } from "../../study/dayNumber.js";
import type { DateOrder } from "./DateOrder.js";

const MONTHS = [
  "january",
  "february",
  "march",
  "april",
  "may",
  "june",
  "july",
  "august",
  "september",
  "october",
  "november",
  "december",
];
const PLACES = {
  "year-month-day": { year: 0, month: 1, day: 2 },
  "day-month-year": { year: 2, month: 1, day: 0 },
  "month-day-year": { year: 2, month: 0, day: 1 },
} as const satisfies Readonly<Record<DateOrder, unknown>>;
/** What spreadsheets put behind a day: midnight says nothing more. */
const MIDNIGHT = /[T ]0?0:00(:00(\.0+)?)?$/;

/**
 * The calendar day `YYYY-MM-DD` that a text means whose parts stand in a declared order, parted by blanks, points, commas, strokes or hyphens:
 * `07/03/2025`, `7.3.25`, `7 Mar 2025`. null: the text is no such day.
 *
 * Whatever the order, a year of four digits that stands first is a year, and an English month name is a month: neither can be read in two ways. A year of two
 * digits is the one year from `twoDigitYearsFrom` on that ends with them (from 1950: 1950 to 2049); null: it is refused.
 */
export function calendarDay(text: string, order: DateOrder, twoDigitYearsFrom: number | null): string | null {
  const parts = partsOf(text.trim().replace(MIDNIGHT, ""), order);
  if (parts === null) return null;
  const year = yearOf(parts.year, twoDigitYearsFrom);
  const month = /^\d/.test(parts.month) ? Number(parts.month) : monthNamed(parts.month) + 1;
  const day = /^(\d{1,2})(st|nd|rd|th)?$/i.exec(parts.day)?.[1];
  if (year === null || day === undefined || !/^(\d{1,2}|\p{L}+)$/u.test(parts.month)) return null;
  const date = `${String(year)}-${String(month).padStart(2, "0")}-${day.padStart(2, "0")}`;
  return dayNumber(date) === null ? null : date;
}

interface Parts {
  readonly year: string;
  readonly month: string;
  readonly day: string;
}

function partsOf(text: string, order: DateOrder): Parts | null {
  const compact = order === "year-month-day" ? /^(\d{4})(\d\d)(\d\d)$/.exec(text) : null;
  const parts = compact?.slice(1) ?? text.split(/\s*[./,-]\s*|\s+/);
  const [first = "", second = "", third = ""] = parts;
  if (parts.length !== 3) return null;
  const named = parts.findIndex((part) => monthNamed(part) !== -1);
  if (named !== -1) {
    const [a = "", b = ""] = parts.filter((_, index) => index !== named);
    const yearFirst = a.length === 4 || (b.length !== 4 && order === "year-month-day");
    return { month: parts[named] ?? "", year: yearFirst ? a : b, day: yearFirst ? b : a };
  }
  if (/^\d{4}$/.test(first)) return { year: first, month: second, day: third };
  const { year, month, day } = PLACES[order];
  return { year: parts[year] ?? "", month: parts[month] ?? "", day: parts[day] ?? "" };
}

/** 0 for January; -1 when the text is not the name of a month or its first three letters (four of September). */
function monthNamed(text: string): number {
  const word = text.toLowerCase();
  return MONTHS.findIndex((month) => word === month || word === month.slice(0, 3) || (word === "sept" && month === "september"));
}

function yearOf(text: string, from: number | null): number | null {
  if (/^\d{4}$/.test(text)) return Number(text);
  if (!/^\d\d$/.test(text) || from === null) return null;
  return from + ((((Number(text) - from) % 100) + 100) % 100);
}
