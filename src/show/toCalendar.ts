import { StudyError } from "../study/StudyError.js";
import { dayNumber } from "../study/dayNumber.js";
import { dateOfDay } from "../study/dateOfDay.js";
import { contentLine } from "./calendar/contentLine.js";
import { calendarText } from "./calendar/calendarText.js";

/** One day in a calendar. */
export interface CalendarEvent {
  /** Globally unique and the same each time the same thing is written, so that a calendar replaces the old entry. */
  readonly uid: string;
  /** Whole number that never falls; a calendar keeps the entry with the greatest. */
  readonly sequence: number;
  /** The day, `YYYY-MM-DD`. */
  readonly date: string;
  readonly summary: string;
  readonly description: string;
  readonly location: string | null;
}

export interface CalendarOptions {
  /** Name of the calendar. */
  readonly name: string;
  /** Instant at which it is written, `YYYY-MM-DDTHH:MM:SSZ`; given, so that the same input makes the same file. */
  readonly stamp: string;
  /** Program and version. */
  readonly program: string;
}

/**
 * Events as an iCalendar file (RFC 5545), UTF-8, CRLF, lines folded at 75 octets. Each event lasts its whole day, in whatever time zone it is
 * read, and does not make the reader busy.
 * @throws StudyError `no_event` when there is none: section 3.6 allows no empty calendar.
 * @throws RangeError for a date, a stamp or a sequence that is none.
 */
export function toCalendar(events: readonly CalendarEvent[], options: CalendarOptions): string {
  if (events.length === 0)
    throw new StudyError(
      "no_event",
      "There is no day to put into a calendar.",
      "A calendar file needs at least one horse with a date.",
    );
  const stamp = instant(options.stamp);
  const lines = [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    `PRODID:${calendarText(`-//underfoot//${options.program}//EN`)}`,
    "CALSCALE:GREGORIAN",
    "METHOD:PUBLISH",
    `NAME:${calendarText(options.name)}`,
    ...events.flatMap((event) => eventLines(event, stamp)),
    "END:VCALENDAR",
  ];
  return lines.map(contentLine).join("");
}

function eventLines(event: CalendarEvent, stamp: string): string[] {
  const day = dayNumber(event.date);
  if (day === null) throw new RangeError(`${event.date} is no calendar day.`);
  if (!Number.isInteger(event.sequence) || event.sequence < 0) throw new RangeError(`${event.sequence} is no sequence number.`);
  return [
    "BEGIN:VEVENT",
    `UID:${calendarText(event.uid)}`,
    `DTSTAMP:${stamp}`,
    `SEQUENCE:${event.sequence}`,
    `DTSTART;VALUE=DATE:${basic(event.date)}`,
    `DTEND;VALUE=DATE:${basic(dateOfDay(day + 1))}`,
    `SUMMARY:${calendarText(event.summary)}`,
    `DESCRIPTION:${calendarText(event.description)}`,
    ...(event.location === null ? [] : [`LOCATION:${calendarText(event.location)}`]),
    "TRANSP:TRANSPARENT",
    "END:VEVENT",
  ];
}

function basic(date: string): string {
  return date.replaceAll("-", "");
}

function instant(stamp: string): string {
  const [, date = "", time = ""] = /^(\d{4}-\d\d-\d\d)T((?:[01]\d|2[0-3]):[0-5]\d:[0-5]\d)(?:\.\d+)?Z$/.exec(stamp) ?? [];
  if (dayNumber(date) === null) throw new RangeError(`${stamp} is no instant in UTC.`);
  return `${basic(date)}T${time.replaceAll(":", "")}Z`;
}
