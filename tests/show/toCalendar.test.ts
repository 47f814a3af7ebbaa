import ICAL from "ical.js";
import { expect, test } from "vitest";
import { toCalendar, type CalendarEvent } from "../../src/show/toCalendar.js";

const options = { name: "Due dates", stamp: "2026-02-28T18:05:09Z", program: "underfoot 0.1.0" };
const event: CalendarEvent = {
  uid: "2ed6657d-e942-568b-95e1-2665a8aea6a2",
  sequence: 20512,
  date: "2026-02-28",
  summary: "Due: Bess, the grey; known as \\Bessie\\",
  description: `First line.\nSecond line, ${"long ".repeat(40)}with é, ß and 🐴.`,
  location: "Brook Farm, Lower Lane",
};

// Read back with ical.js 2, a parser of others.
test("another program reads every value back as it was", () => {
  const calendar = new ICAL.Component(
    ICAL.parse(toCalendar([event, { ...event, uid: "b", location: null }], options)) as unknown[],
  );
  expect(calendar.getFirstPropertyValue("version")).toBe("2.0");
  expect(calendar.getFirstPropertyValue("method")).toBe("PUBLISH");
  expect(calendar.getFirstPropertyValue("name")).toBe("Due dates");
  const events = calendar.getAllSubcomponents("vevent").map((each) => new ICAL.Event(each));
  expect(events).toHaveLength(2);
  const [first, second] = events;
  expect(first).toMatchObject({
    uid: event.uid,
    summary: event.summary,
    description: event.description,
    location: event.location,
  });
  expect(first!.startDate.isDate).toBe(true);
  expect(first!.startDate.toString()).toBe("2026-02-28");
  // The end is the first day after it, RFC 5545 section 3.6.1: "the "DTEND" property ... non-inclusive end".
  expect(first!.endDate.toString()).toBe("2026-03-01");
  expect(first!.duration.toString()).toBe("P1D");
  expect(first!.sequence).toBe(20512);
  expect(String(first!.component.getFirstPropertyValue("dtstamp"))).toBe("2026-02-28T18:05:09Z");
  expect(second!.location).toBeNull();
});

test("the file as RFC 5545 asks for it", () => {
  const written = toCalendar([event], options);
  const lines = written.split("\r\n");
  // Section 3.1: CRLF ends every line, and no other line break stands in it; at most 75 octets.
  expect(lines.at(-1)).toBe("");
  expect(lines.join("")).not.toMatch(/[\r\n]/);
  expect(Math.max(...lines.map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(75);
  expect(lines.some((line) => line.startsWith(" "))).toBe(true);
  const unfolded = written.replaceAll("\r\n ", "").split("\r\n");
  // Section 3.6: VERSION and PRODID once each; section 3.6.1: UID and DTSTAMP once each, DTSTART required here as METHOD stands.
  const once = [
    "BEGIN:VCALENDAR",
    "VERSION:",
    "PRODID:",
    "METHOD:",
    "BEGIN:VEVENT",
    "UID:",
    "DTSTAMP:",
    "DTSTART",
    "END:VEVENT",
    "END:VCALENDAR",
  ];
  expect(once.map((start) => unfolded.filter((line) => line.startsWith(start)).length)).toEqual(once.map(() => 1));
  expect(unfolded[0]).toBe("BEGIN:VCALENDAR");
  expect(unfolded.at(-2)).toBe("END:VCALENDAR");
  // Section 3.3.4 and 3.2.20: a date of its own kind, without time or zone. Section 3.3.5, form 2: UTC by the letter Z.
  expect(unfolded).toContain("DTSTART;VALUE=DATE:20260228");
  expect(unfolded).toContain("DTEND;VALUE=DATE:20260301");
  expect(unfolded).toContain("DTSTAMP:20260228T180509Z");
  // Section 3.8.2.7: does not take up time.
  expect(unfolded).toContain("TRANSP:TRANSPARENT");
});

test("the same input gives the same file", () => {
  expect(toCalendar([event], options)).toBe(toCalendar([event], options));
  expect(toCalendar([event], { ...options, stamp: "2026-02-28T18:05:09.123Z" })).toBe(toCalendar([event], options));
});

test("no calendar without an event (RFC 5545 section 3.6), nor with what is no day, instant or sequence", () => {
  expect(() => toCalendar([], options)).toThrow(expect.objectContaining({ code: "no_event" }) as Error);
  expect(() => toCalendar([{ ...event, date: "2026-02-30" }], options)).toThrow("no calendar day");
  expect(() => toCalendar([{ ...event, sequence: -1 }], options)).toThrow("no sequence number");
  for (const stamp of ["2026-02-28", "2026-02-28T18:05:09+01:00", "2026-02-28T24:05:09Z", "2026-02-30T18:05:09Z"])
    expect(() => toCalendar([event], { ...options, stamp })).toThrow("no instant in UTC");
});
