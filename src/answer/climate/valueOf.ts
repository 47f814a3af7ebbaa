/** A cell of a row by the name of its column; missing is null. */
export function valueOf(row: object, column: string): unknown {
  return (row as Readonly<Record<string, unknown>>)[column] ?? null;
}
