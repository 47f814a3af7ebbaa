import { fabricMeasures } from "../../../derive/fabric/fabricMeasures.js";
import type { FootPair } from "../../../derive/fabric/FootPair.js";
import type { FootTable } from "../../../derive/fabric/FootTable.js";
import { standingFeet } from "../../../derive/fabric/standingFeet.js";
import type { Readings } from "../../../estimate/fabric/Readings.js";

/**
 * The first foot of a pair less the second in each set of some horses, by their places in the table, for each of `fabricMeasures`. What both feet
 * share, such as growth since the last trim, drops out; when the two labels were exchanged, each value has the wrong sign.
 *
 * Missing: NaN where either foot was not measured.
 */
export function pairReadings(table: FootTable, [first, second]: FootPair, horses: readonly number[]): Readings {
  const columns = fabricMeasures.length;
  const [a, b] = [standingFeet.indexOf(first), standingFeet.indexOf(second)];
  const values: number[] = [];
  const days: number[] = [];
  const starts = [0];
  for (const horse of horses) {
    for (let set = table.starts[horse] ?? 0; set < (table.starts[horse + 1] ?? 0); set++) {
      const [of, less] = [(set * standingFeet.length + a) * columns, (set * standingFeet.length + b) * columns];
      for (let column = 0; column < columns; column++) {
        values.push((table.values[of + column] ?? NaN) - (table.values[less + column] ?? NaN));
      }
      days.push(table.days[set] ?? 0);
    }
    starts.push(days.length);
  }
  return { columns, values, starts, days };
}
