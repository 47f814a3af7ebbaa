import type { Foot } from "../../study/Foot.js";
import type { SourceColumn, TableSource } from "../mapping/TableSource.js";
import type { Fault } from "../report/Fault.js";
import { mappingMessages } from "../report/mappingMessages.js";
import { messages } from "../report/messages.js";
import { nearestName } from "../../study/nearestName.js";
import { refusals } from "../report/refusals.js";
import { codeWord } from "./codeWord.js";

/** Where the cells of one record stand in a row. The lists are in the order of the columns of the table. */
export interface RecordLayout {
  /** The foot whose cells these are, in a file with one row a visit; null: the row is the record. */
  readonly foot: Foot | null;
  /** Index in the row, or -1 when the file does not have the column. */
  readonly at: readonly number[];
  /** Whether the cell belongs to this foot alone; false: all feet of the row share it. */
  readonly own: readonly boolean[];
}

/** Where the columns of a table stand in a row of a file. */
export interface ColumnLayout {
  /** Cells of a row. */
  readonly width: number;
  /** The records of a row: one, or one for each foot. */
  readonly records: readonly RecordLayout[];
  /** Further columns that are kept as they are. */
  readonly extra: readonly { readonly header: string; readonly at: number }[];
  /** The headers as they stand in the file. */
  readonly headers: readonly string[];
}

type Source = Pick<TableSource, "file" | "delimiter" | "columns" | "feet" | "extra">;

/**
 * Finds the columns of a table in a header, by the spellings that the mapping gives or by their own names. Case, and spaces or hyphens for `_`, make no difference,
 * unless only they tell two headers apart. A column that is not known or has no name is reported once and left alone; so is a header that the mapping names and the
 * file does not have.
 *
 * @throws StudyError `header_missing` when a required column is not there, `header_duplicate` when one is there twice.
 */
export function columnLayout(
  source: Source,
  header: readonly string[],
  report: (fault: Fault, header: string) => void,
): ColumnLayout {
  const { file, columns, feet } = source;
  const find = finder(file, header);
  const used = new Set<number>();
  const take = (name: string, headers: readonly string[], stated: boolean) => {
    const at = find(name, headers, stated);
    if (at !== -1) used.add(at);
    return at;
  };
  const shared = columns.map((source) =>
    source.constant === undefined ? take(source.column.name, sharedNames(source), source.headers !== null) : -1,
  );
  const ofFeet = (feet ?? []).flatMap(({ foot, spellings }): RecordLayout[] => {
    const own = columns.map((source, index) =>
      source.constant === undefined && (shared[index] ?? -1) === -1
        ? take(source.column.name, footNames(source, spellings), source.headers !== null)
        : -1,
    );
    if (own.every((at) => at === -1)) return [];
    return [{ foot, at: own.map((at, index) => (at === -1 ? (shared[index] ?? -1) : at)), own: own.map((at) => at !== -1) }];
  });
  const records = feet === null ? [{ foot: null, at: shared, own: columns.map(() => false) }] : ofFeet;
  const extra = source.extra.flatMap((name) => {
    const at = take(name, [name], true);
    return at === -1 ? [] : [{ header: name, at }];
  });

  const strangers = header.filter((name, index) => !used.has(index) && name.trim() !== "");
  const absent = columns.filter(
    ({ constant }, index) => constant === undefined && !records.some(({ at }) => (at[index] ?? -1) !== -1),
  );
  const missing = absent.filter(({ column }) => column.required && !(feet !== null && column.name === "foot"));
  if (missing.length > 0 || records.length === 0) {
    const names = records.length === 0 ? ["any column of a foot"] : missing.map(inWords);
    throw refusals.headerMissing({
      file,
      missing: names,
      found: header,
      nearest: nearestName(missing[0]?.headers?.[0] ?? missing[0]?.column.name ?? "", strangers),
      delimiter: source.delimiter,
    });
  }
  for (const { column, headers } of absent) {
    if (headers !== null)
      report(mappingMessages.headerAbsent(column.name, headers, nearestName(headers[0] ?? "", strangers)), headers[0] ?? "");
  }
  for (const name of source.extra) {
    if (!extra.some((kept) => kept.header === name))
      report(mappingMessages.extraAbsent(name, nearestName(name, strangers)), name);
  }
  const known = absent.map(({ column, headers }) => headers?.[0] ?? column.name);
  header.forEach((name, index) => {
    if (used.has(index)) return;
    if (name.trim() === "") report(messages.unnamedColumn(index + 1), "");
    else report(messages.unknownColumn(name, nearestName(name, known)), name);
  });
  return { width: header.length, records, extra, headers: header };
}

function sharedNames({ column, headers }: SourceColumn): readonly string[] {
  return headers === null ? [column.name] : headers.filter((name) => !name.includes("{foot}"));
}

function footNames({ column, headers }: SourceColumn, spellings: readonly string[]): readonly string[] {
  const patterns =
    headers?.filter((name) => name.includes("{foot}")) ?? (column.level === "foot-visit" ? [`{foot}_${column.name}`] : []);
  return patterns.flatMap((pattern) => spellings.map((spelling) => pattern.replaceAll("{foot}", spelling)));
}

function inWords({ column, headers }: SourceColumn): string {
  return headers === null ? column.name : `${column.name} (in study.json ${headers.map((name) => `"${name}"`).join(" or ")})`;
}

/** Finds the one header of a column; where several fit, a stated spelling may be told apart by its very letters. */
function finder(file: string, header: readonly string[]): (column: string, names: readonly string[], stated: boolean) => number {
  const loose = new Map<string, number[]>();
  header.forEach((name, index) => {
    const word = codeWord(name.normalize("NFC"));
    loose.set(word, [...(loose.get(word) ?? []), index]);
  });
  return (column, names, stated) => {
    const found = [...new Set(names.flatMap((name) => loose.get(codeWord(name.normalize("NFC"))) ?? []))];
    if (found.length < 2) return found[0] ?? -1;
    const exact = found.filter((index) => names.includes((header[index] ?? "").normalize("NFC").trim()));
    if (stated && exact.length === 1) return exact[0] ?? -1;
    throw refusals.headerDuplicate(
      file,
      column,
      found.map((index) => header[index] ?? ""),
    );
  };
}
