import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { isAbsolute, join } from "node:path";
import { expect, test } from "vitest";
import type { KernelSpec } from "../../src/run/kernelSpec.js";
import { writeKernelSpec } from "../../src/run/writeKernelSpec.js";

test("the file names programs that are there and run from any folder", async () => {
  const folder = mkdtempSync(join(tmpdir(), "underfoot-test-"));
  try {
    const path = await writeKernelSpec(join(folder, "kernels", "tslab"));
    expect(path).toBe(join(folder, "kernels", "tslab", "kernel.json"));
    const { argv } = JSON.parse(readFileSync(path, "utf8")) as KernelSpec;
    const [node = "", ...programs] = argv.slice(0, argv.indexOf("kernel"));
    expect([node, ...programs].map((each) => isAbsolute(each))).toEqual([true, true, true]);
    expect(execFileSync(node, [...programs, "--version"], { cwd: folder, encoding: "utf8" })).toBe("tslab 1.0.22\n");
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
