import { expect, test } from "vitest";
import { quoted } from "../../../src/read/report/quoted.js";

test("text is shown in quotes, cut at 60 characters", () => {
  expect(quoted("Ash")).toBe('"Ash"');
  expect(quoted("x".repeat(60))).toBe(`"${"x".repeat(60)}"`);
  expect(quoted("x".repeat(61))).toBe(`"${"x".repeat(60)}…"`);
});

test("control characters cannot reach a terminal", () => {
  expect(quoted("a\nb\u001b[31mc\u0000\u0085")).toBe('"a⏎b�[31mc��"');
});
