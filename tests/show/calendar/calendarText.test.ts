import { expect, test } from "vitest";
import { calendarText } from "../../../src/show/calendar/calendarText.js";

// The example of RFC 5545 section 3.3.11: "Project XYZ Final Review / Conference Room - 3B / Come Prepared." on three lines.
test("escapes as the example of RFC 5545 section 3.3.11", () => {
  expect(calendarText("Project XYZ Final Review\nConference Room - 3B\nCome Prepared.")).toBe(
    "Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.",
  );
});

test("backslash, semicolon and comma are escaped; a colon and quotes are not", () => {
  expect(calendarText('a\\b;c,d:e"f')).toBe('a\\\\b\\;c\\,d:e"f');
});

test("any line break is one, control characters go, a tab stays", () => {
  expect(calendarText("a\r\nb\rc\nd")).toBe("a\\nb\\nc\\nd");
  expect(calendarText("a\u0000\u001b\u007f\tb")).toBe("a\tb");
});

test("half a surrogate pair becomes the replacement character", () => {
  expect(calendarText("a\ud83db")).toBe("a\ufffdb");
});
