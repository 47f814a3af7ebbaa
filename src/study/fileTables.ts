import { changeColumns } from "./changeColumns.js";
import type { Column } from "./Column.js";
import { horseColumns } from "./horseColumns.js";
import { outlineColumns } from "./outlineColumns.js";
import type { TableKind } from "./TableKind.js";
import { visitColumns } from "./visitColumns.js";
import { weatherColumns } from "./weatherColumns.js";
import { yardColumns } from "./yardColumns.js";

/** The files of a study folder: name, what a row is, the columns. @private */
export const fileTables: readonly {
  readonly kind: TableKind;
  readonly file: string;
  readonly row: string;
  readonly columns: readonly Column[];
}[] = [
  { kind: "visits", file: "visits.csv", row: "one foot at one visit", columns: visitColumns },
  { kind: "horses", file: "horses.csv", row: "one stay of one horse at one yard", columns: horseColumns },
  { kind: "yards", file: "yards.csv", row: "one yard", columns: yardColumns },
  { kind: "changes", file: "changes.csv", row: "one dated change at a yard", columns: changeColumns },
  { kind: "weather", file: "weather.csv", row: "one day of one gauge", columns: weatherColumns },
  { kind: "outlines", file: "outlines.csv", row: "one point of a traced outline", columns: outlineColumns },
];
