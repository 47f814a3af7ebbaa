import { expect, test } from "vitest";
import { mutations } from "./mutations.js";

// The long run is `npm run bench -- mutations`; its figures stand in docs/decisions.md.
test("thousands of damaged files: worded refusals or sums that add up, true lines, the same twice", async () => {
  const met = await mutations(500, 20_261_125);
  expect(met.studies).toBe(500);
  expect(met.mutatedFiles).toBeGreaterThan(1_200);
  // The run is worth something only when most studies are read and many rows are spoilt.
  const refused = Object.values(met.refused).reduce((sum, count) => sum + count, 0);
  expect(refused).toBeLessThan(met.studies / 2);
  expect(met.rowsSetAside).toBeGreaterThan(500);
}, 300_000);
