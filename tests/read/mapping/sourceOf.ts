import type { FileMapping } from "../../../src/read/mapping/FileMapping.js";
import type { TableSource } from "../../../src/read/mapping/TableSource.js";
import { tableSources } from "../../../src/read/mapping/tableSources.js";
import { fileTables } from "../../../src/study/fileTables.js";
import type { TableKind } from "../../../src/study/TableKind.js";

/** The one file of a table as a mapping says it, for a test. */
export function sourceOf(kind: TableKind, mapping: Omit<FileMapping, "file">): TableSource {
  const table = fileTables.find((entry) => entry.kind === kind)!;
  return tableSources(table, { [kind]: [{ file: table.file, ...mapping }] })[0]!;
}
