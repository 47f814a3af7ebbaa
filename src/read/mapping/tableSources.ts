import type { Column } from "../../study/Column.js";
import type { fileTables } from "../../study/fileTables.js";
import type { Foot } from "../../study/Foot.js";
import type { CellValue } from "../table/CellValue.js";
import { columnReading } from "./columnReading.js";
import type { ColumnMapping, FileMapping, FilesMapping } from "./FileMapping.js";
import type { SourceColumn, TableSource } from "./TableSource.js";

const FEET = ["LF", "RF", "LH", "RH"] as const satisfies readonly Foot[];

/** The files that hold one table: those that `study.json` names, each with its mapping, else the one file of the usual name, read as it is. */
export function tableSources(
  { kind, file, columns }: (typeof fileTables)[number],
  files: FilesMapping | undefined,
): TableSource[] {
  const mappings = files?.[kind];
  if (mappings === undefined) return [sourceOf(file, { file }, columns, false)];
  return mappings.flatMap((mapping) => [mapping.file].flat().map((name) => sourceOf(name, mapping, columns, true)));
}

function sourceOf(file: string, mapping: FileMapping, columns: readonly Column[], named: boolean): TableSource {
  const { delimiter, encoding, feet, extra } = mapping;
  return {
    file,
    named,
    delimiter: delimiter === "tab" ? "\t" : (delimiter ?? ","),
    encoding: encoding ?? undefined,
    columns: columns.map((column) => sourceColumn(column, mapping)),
    feet: feet === undefined || feet === null ? null : FEET.map((foot) => ({ foot, spellings: [feet[foot] ?? foot].flat() })),
    extra: extra ?? [],
  };
}

function sourceColumn(column: Column, mapping: FileMapping): SourceColumn {
  const stated = mapping.columns?.[column.name] ?? {};
  const own: ColumnMapping =
    typeof stated === "string" || Array.isArray(stated)
      ? { header: stated as string | readonly string[] }
      : (stated as ColumnMapping);
  const { header, value } = own;
  return {
    column,
    headers: header === undefined || header === null ? null : [header].flat(),
    constant: value === undefined || value === null ? undefined : constantOf(column, value),
    reading: columnReading(column, own, mapping),
  };
}

function constantOf(column: Column, value: NonNullable<ColumnMapping["value"]>): CellValue {
  if (column.type === "codes") return [String(value)];
  return column.type === "id" ? String(value).normalize("NFC").trim().replace(/\s+/g, " ") : value;
}
