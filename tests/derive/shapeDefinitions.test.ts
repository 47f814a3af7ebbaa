import { expect, test } from "vitest";
import { shapeDefinitions } from "../../src/derive/shapeDefinitions.js";
import { visitColumns } from "../../src/study/visitColumns.js";
import { fieldName } from "../../src/study/fieldName.js";

test("every length and angle of the visits that is measured on the hoof is defined, in its unit", () => {
  const other = ["cleftDepthMm", "crackLengthMm", "markBelowCoronetMm"];
  const columns = visitColumns.filter(({ name, unit }) => (unit === "mm" || unit === "deg") && !other.includes(fieldName(name)));
  expect(columns.length).toBe(10);
  for (const { name, unit } of columns) {
    expect(shapeDefinitions[fieldName(name) as keyof typeof shapeDefinitions].unit, name).toBe(unit);
  }
});

test("each says how it is measured and where that comes from", () => {
  for (const { title, definition, source } of Object.values(shapeDefinitions)) {
    expect(title).toMatch(/^[A-Z]/);
    expect(definition.length).toBeGreaterThan(15);
    expect(source).toMatch(/no source|Turner/);
  }
});
