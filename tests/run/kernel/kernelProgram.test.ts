import { existsSync } from "node:fs";
import { isAbsolute } from "node:path";
import { afterEach, expect, test, vi } from "vitest";

afterEach(() => {
  vi.doUnmock("node:module");
  vi.resetModules();
});

test("the program of the installed kernel is found", async () => {
  const { kernelProgram } = await import("../../../src/run/kernel/kernelProgram.js");
  const program = kernelProgram("/nowhere");
  expect([isAbsolute(program), existsSync(program)]).toEqual([true, true]);
});

test("one that is not installed is told with what to install", async () => {
  vi.resetModules();
  vi.doMock("node:module", () => ({
    createRequire: () => ({
      resolve: () => {
        throw new Error("not found");
      },
    }),
  }));
  const { kernelProgram } = await import("../../../src/run/kernel/kernelProgram.js");
  expect(() => kernelProgram("/nowhere")).toThrow(
    expect.objectContaining({
      code: "kernel_missing",
      hint: "Install it beside underfoot: npm install tslab@1.0.22 zeromq.",
    }) as Error,
  );
});
