import { parquetMetadata, parquetReadObjects } from "hyparquet";
import { expect, test } from "vitest";
import { toParquet } from "../../src/show/toParquet.js";
import { toTable } from "../../src/show/toTable.js";

// Read back by hyparquet, the reader that is developed apart from the writer.
async function readBack(bytes: Uint8Array): Promise<Record<string, unknown>[]> {
  return parquetReadObjects({ file: bytes.slice().buffer });
}

test("numbers, texts, yes and no, and what is missing come back as they were", async () => {
  const rows = [
    { horse: "Fern, the bay", foot: "LF", grade: 2, angle: 50.25, shod: true, nothing: null },
    { horse: 'Söt "n" 馬', foot: null, grade: null, angle: -0.1, shod: null, nothing: null },
    { horse: "Moss", foot: "RH", grade: 0, angle: null, shod: false, nothing: null },
  ];
  expect(await readBack(await toParquet(toTable(rows)))).toEqual(rows);
});

test("columns have the types of what they hold", async () => {
  const table = toTable([{ whole: 2 ** 31 - 1, large: 2 ** 31, part: 0.5, said: "a", yes: true, mixed: 1 }, { mixed: "one" }]);
  const { schema } = parquetMetadata((await toParquet(table)).slice().buffer);
  const types = Object.fromEntries(schema.slice(1).map(({ name, type, converted_type }) => [name, converted_type ?? type]));
  expect(types).toEqual({ whole: "INT32", large: "DOUBLE", part: "DOUBLE", said: "UTF8", yes: "BOOLEAN", mixed: "UTF8" });
});

test("NaN is refused", async () => {
  const table = { caption: "", columns: [{ name: "a", title: "a" }], rows: [{ a: NaN }] };
  await expect(toParquet(table)).rejects.toThrow("The column a holds NaN");
});
