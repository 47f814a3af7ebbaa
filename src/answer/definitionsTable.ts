import type { Table } from "../chart/Table.js";
import { shapeDefinitions } from "../derive/shapeDefinitions.js";
import type { ShapeMeasure } from "../derive/ShapeMeasure.js";

/** What each measure of shape is, with its source; printed beside every figure of it. @private */
export function definitionsTable(measures: readonly ShapeMeasure[]): Table {
  return {
    caption: "What was measured",
    columns: [
      { name: "title", title: "Measure" },
      { name: "unit", title: "Unit" },
      { name: "definition", title: "Definition" },
      { name: "source", title: "Source" },
    ],
    rows: measures.map((measure) => {
      const { title, unit, definition, source } = shapeDefinitions[measure];
      return { title, unit: unit ?? "ratio", definition, source };
    }),
  };
}
