import { expect, test } from "vitest";
import { publishedGrowthTable } from "../../src/answer/publishedGrowthTable.js";

// Reilly JD et al. 1998, Equine Vet J Suppl 26:51; Josseck H et al. 1995, Equine Vet J 27:175; Kolstrung R et al. 2012, Med Weter 68:426 (abstracts).
test("every rate with its source, from slowest to fastest", () => {
  const { rows } = publishedGrowthTable();
  expect(rows.map(({ mmPerDay }) => mmPerDay)).toEqual([0.202, 0.25, 0.31]);
  expect(rows.map(({ source }) => /\b(1995|1998|2012)\b/.exec(String(source))?.[0])).toEqual(["1998", "1995", "2012"]);
});
