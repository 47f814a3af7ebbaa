import { afterEach, beforeEach, expect, vi } from "vitest";

// Unexpected console output fails a test. A test that expects some replaces the spy itself.
const said: string[] = [];

beforeEach(() => {
  said.length = 0;
  for (const method of ["log", "info", "warn", "error"] as const) {
    vi.spyOn(console, method).mockImplementation((...args: unknown[]) => said.push(`${method}: ${args.join(" ")}`));
  }
});

afterEach(() => {
  vi.restoreAllMocks();
  expect(said, "unexpected console output").toEqual([]);
});
