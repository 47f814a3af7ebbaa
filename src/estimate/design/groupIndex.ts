import { EstimateError } from "../EstimateError.js";

type Label = string | number | boolean;

/** Which group each used row belongs to. */
export interface GroupIndex {
  /** 0 .. `count` - 1 for each used row, in order of first appearance. */
  readonly index: Int32Array;
  readonly count: number;
  /** The values that name each group, one a column. */
  readonly labels: readonly (readonly Label[])[];
}

/**
 * Groups the used rows by the values of one or more columns taken together, so that an inner name need only be unique within the
 * outer ones (a horse within its yard).
 *
 * Errors: `out_of_range` for a value that is neither text, number nor boolean.
 */
export function groupIndex(rows: readonly object[], used: Int32Array, columns: readonly string[]): GroupIndex {
  let index = new Int32Array(used.length);
  // A row of each group, to read its names from.
  let places: readonly number[] = [0];
  for (const column of columns) {
    const inner = places.map(() => new Map<unknown, number>());
    const found: number[] = [];
    const next = new Int32Array(used.length);
    let [outer, value, group] = [-1, undefined as unknown, -1];
    for (let i = 0; i < used.length; i += 1) {
      const place = used[i]!;
      const here = (rows[place] as Readonly<Record<string, unknown>>)[column];
      // Rows of a group mostly stand together.
      if (here !== value || index[i] !== outer) {
        [outer, value] = [index[i]!, here];
        group = inner[outer]!.get(value) ?? -1;
      }
      if (group === -1) {
        requireLabel(column, value, place + 1);
        group = found.length;
        inner[outer]!.set(value, group);
        found.push(place);
      }
      next[i] = group;
    }
    [index, places] = [next, found];
  }
  const labels = places.map((place) => columns.map((column) => (rows[place] as Readonly<Record<string, Label>>)[column]!));
  return { index, count: labels.length, labels };
}

function requireLabel(column: string, value: unknown, row: number): void {
  if (typeof value === "string" || typeof value === "number" || typeof value === "boolean") return;
  throw new EstimateError(
    "out_of_range",
    `Column "${column}" holds ${JSON.stringify(value)} in row ${row}, which cannot name a group.`,
    "Name groups by text or numbers.",
  );
}
