import { EstimateError } from "../EstimateError.js";

/** Which group each used row belongs to. */
export interface GroupIndex {
  /** 0 .. `count` - 1 for each used row, in order of first appearance. */
  readonly index: Int32Array;
  readonly count: number;
  /** The values that name each group, one a column. */
  readonly labels: readonly (readonly (string | number | boolean)[])[];
}

/**
 * Groups the used rows by the values of one or more columns taken together, so that an inner name need only be unique within the
 * outer ones (a horse within its yard).
 *
 * Errors: `out_of_range` for a value that is neither text, number nor boolean.
 */
export function groupIndex(rows: readonly object[], used: Int32Array, columns: readonly string[]): GroupIndex {
  let index = new Int32Array(used.length);
  let labels: (string | number | boolean)[][] = [[]];
  for (const column of columns) {
    const inner = labels.map(() => new Map<unknown, number>());
    const joined: (string | number | boolean)[][] = [];
    const next = new Int32Array(used.length);
    for (let i = 0; i < used.length; i += 1) {
      const place = used[i]!;
      const value = (rows[place] as Readonly<Record<string, unknown>>)[column];
      let group = inner[index[i]!]!.get(value);
      if (group === undefined) {
        group = joined.length;
        inner[index[i]!]!.set(value, group);
        joined.push([...labels[index[i]!]!, labelOf(column, value, place + 1)]);
      }
      next[i] = group;
    }
    [index, labels] = [next, joined];
  }
  return { index, count: labels.length, labels };
}

function labelOf(column: string, value: unknown, row: number): string | number | boolean {
  if (typeof value === "string" || typeof value === "number" || typeof value === "boolean") return value;
  throw new EstimateError(
    "out_of_range",
    `Column "${column}" holds ${JSON.stringify(value)} in row ${row}, which cannot name a group.`,
    "Name groups by text or numbers.",
  );
}
