import { expect, test } from "vitest";
import { mutations } from "./mutations.js";

// The long run is `npm run bench -- mutations`; its figures stand in docs/decisions.md.
test("thousands of damaged files: worded refusals or sums that add up, true lines, the same twice", async () => {
  const met = await mutations(500, 20_261_125);
  expect(met.studies).toBe(500);
  expect(met.mutatedFiles).toBeGreaterThan(1_200);
  // The run is worth something only when many studies are read, and rows of them are kept and spoilt.
  const refused = Object.values(met.refused).reduce((sum, count) => sum + count, 0);
  expect(met.studies - refused).toBeGreaterThan(150);
  expect(met.rowsSetAside).toBeGreaterThan(1_000);
  expect(met.rowsRead - met.rowsSetAside).toBeGreaterThan(1_000);
}, 300_000);
