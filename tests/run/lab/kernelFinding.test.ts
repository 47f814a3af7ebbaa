import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { kernelFinding } from "../../../src/run/lab/kernelFinding.js";
import { writeKernelSpec } from "../../../src/run/writeKernelSpec.js";
import { folderWith } from "../folders.js";

function withSpec(content: string): string {
  const data = folderWith();
  mkdirSync(join(data, "kernels", "tslab"), { recursive: true });
  writeFileSync(join(data, "kernels", "tslab", "kernel.json"), content);
  return data;
}

test("what writeKernelSpec wrote is good", async () => {
  const data = folderWith();
  const path = await writeKernelSpec(join(data, "kernels", "tslab"));
  expect(await kernelFinding([data])).toEqual({ what: "Kernel spec", good: true, found: path, mend: null });
});

test("nothing, something that cannot be read, a bare name and a path that leads nowhere are to be mended", async () => {
  const found = async (...folders: string[]) => {
    const { good, found, mend } = await kernelFinding(folders);
    expect({ good, mend }).toEqual({ good: false, mend: "npx underfoot kernel install" });
    return found;
  };
  expect(await found(folderWith())).toBe("Jupyter knows no TypeScript kernel");
  expect(await found(withSpec("{"))).toContain("cannot be read");
  const bare = withSpec(JSON.stringify({ argv: ["tslab", "kernel", "--config-path", "{connection_file}"] }));
  expect(await found(bare)).toContain('names "tslab" without its folder');
  const gone = withSpec(JSON.stringify({ argv: [process.execPath, "/nowhere/tslab", "kernel"] }));
  expect(await found(gone)).toContain("/nowhere/tslab, which is not there");
  // Jupyter takes the first; a good one behind it does not help.
  const good = folderWith();
  await writeKernelSpec(join(good, "kernels", "tslab"));
  expect(await found(gone, good)).toContain("which is not there");
});
