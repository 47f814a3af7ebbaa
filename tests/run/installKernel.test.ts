import { existsSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { installKernel } from "../../src/run/installKernel.js";
import { kernelFinding } from "../../src/run/lab/kernelFinding.js";
import { folderWith, heard } from "./folders.js";

test("writes a kernel that doctor finds good, and says where", async () => {
  const data = folderWith();
  const terminal = heard();
  expect(await installKernel(data, terminal)).toBe(0);
  const path = join(data, "kernels", "tslab", "kernel.json");
  expect(existsSync(path)).toBe(true);
  expect(terminal.text()).toContain(`Wrote ${path}\n`);
  expect(await kernelFinding([data])).toMatchObject({ good: true });
});
