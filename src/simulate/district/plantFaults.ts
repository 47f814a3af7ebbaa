import { changeCell } from "./changeCell.js";
import { insertCopy } from "./insertCopy.js";
import { plantVisitFaults } from "./plantVisitFaults.js";
import type { TextLine } from "./TextLine.js";

/** Lines of the files that get faults. */
export interface DistrictLines {
  readonly visits: TextLine[];
  readonly horses: TextLine[];
  readonly changes: TextLine[];
  readonly weather: TextLine[];
  readonly outlines: TextLine[];
}

/**
 * Plants one fault of each kind into the lines, in place: cells are changed, lines are put in or cut. The same lines get the same faults.
 * Returns nothing; the lines carry their faults.
 *
 * Errors: throws when the lines hold no row a fault could be planted in.
 */
export function plantFaults({ visits, horses, changes, weather, outlines }: DistrictLines): void {
  plantVisitFaults(visits, horses);
  changes.push({
    cells: { yard_id: "Oddleigh", changed_on: "2025-11-03", what: "gateway laid with stone" },
    fault: {
      kind: "unknown_yard",
      code: "unknown_yard",
      column: "yard_id",
      expected: "warning",
      about: "A yard that yards.csv does not know.",
    },
  });
  changeCell(
    weather,
    ({ date, gauge_id }) => date === "2025-07-29" && gauge_id === "Brack Top",
    0,
    "rain_mm",
    () => -999,
    {
      kind: "missing_code_as_rain",
      code: "missing_code",
      expected: "cell_blanked",
      about: "A code for missing instead of rain.",
    },
  );
  changeCell(
    weather,
    ({ date }) => date === "2025-05-14",
    0,
    "humidity_pct",
    () => 141,
    {
      kind: "impossible_humidity",
      code: "out_of_range",
      expected: "cell_blanked",
      about: "A humidity above 100 %.",
    },
  );
  insertCopy(
    outlines,
    ({ ring, point }) => ring === "wall" && point === 12,
    0.35,
    (cells) => ({ ...cells, x_mm: Number(cells["x_mm"]) + 1 }),
    {
      kind: "point_traced_twice",
      code: "duplicate_row",
      column: "point",
      expected: "set_aside",
      about: "The point before, once more, a millimetre off.",
    },
  );
  changeCell(
    outlines,
    ({ ring, x_mm }) => ring === "wall" && String(x_mm).includes("1"),
    0.65,
    "x_mm",
    (mm) => String(mm).replace("1", "l"),
    {
      kind: "letter_for_digit_in_outline",
      code: "not_a_number",
      expected: "set_aside",
      about: "The letter l instead of a one; a point without a place is no point.",
    },
  );
}
