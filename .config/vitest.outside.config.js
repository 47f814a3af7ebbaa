import { defineConfig } from "vitest/config";

// What needs more than Node: JupyterLab and a browser (tests/lab), a browser (tests/pages), the package registry (tests/package). `npm test`
// leaves it out. One file at a time: the kernels and the browser take what the machine has.
export default defineConfig({
  test: {
    root: `${import.meta.dirname}/..`,
    include: ["tests/{lab,package,pages}/**/*.test.ts"],
    setupFiles: ["tests/fail-on-console.ts"],
    fileParallelism: false,
    testTimeout: 240_000,
    hookTimeout: 240_000,
  },
});
