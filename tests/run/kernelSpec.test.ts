import { expect, test } from "vitest";
import { kernelSpec } from "../../src/run/kernelSpec.js";

test("the kernel is started with absolute paths and the connection file in an argument of its own", () => {
  // Keys and placeholder as in the Jupyter client documentation, "Kernel specs".
  expect(kernelSpec("/opt/node", "/spec/start.cjs", "/lib/tslab")).toEqual({
    argv: ["/opt/node", "/spec/start.cjs", "/lib/tslab", "kernel", "--config-path", "{connection_file}"],
    display_name: "TypeScript",
    language: "typescript",
    interrupt_mode: "signal",
    metadata: {},
  });
});
