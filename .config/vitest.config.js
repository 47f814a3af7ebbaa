import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: `${import.meta.dirname}/..`,
    include: ["tests/**/*.test.ts"],
    exclude: ["tests/*/node_modules/**", "tests/{lab,package,pages}/**"],
    setupFiles: ["tests/fail-on-console.ts"],
    env: { TZ: "Pacific/Auckland" },
    testTimeout: 30_000,
    // On two cores the runner would leave one idle.
    maxWorkers: "100%",
  },
});
