import { defineConfig } from "vitest/config";

// What needs JupyterLab and a browser, so `npm test` leaves it out. One file at a time: they share the JupyterLab of .venv and its kernels.
export default defineConfig({
  test: {
    root: `${import.meta.dirname}/..`,
    include: ["tests/lab/**/*.test.ts"],
    setupFiles: ["tests/fail-on-console.ts"],
    fileParallelism: false,
    testTimeout: 240_000,
    hookTimeout: 240_000,
  },
});
