import type { Column } from "../../study/Column.js";
import { fileTables } from "../../study/fileTables.js";
import type { TableKind } from "../../study/TableKind.js";
import { columnNames } from "./columnNames.js";
import { footPatterns, type FootHeaders, type FootPattern } from "./footPatterns.js";
import { headerMeaning } from "./headerMeaning.js";

/** A column of a table and where it seems to stand in a file. */
export interface MatchedColumn {
  readonly column: Column;
  /** As `study.json` names it: with `{foot}` in a file with one row a visit. */
  readonly header: string;
  /** Places of its cells in a row. */
  readonly at: readonly number[];
  /** The unit that the header names. */
  readonly unit: string | null;
  /** Other headers that could mean the same column. */
  readonly rivals: readonly string[];
}

/** Which table a file seems to hold. */
export interface TableMatch {
  readonly kind: TableKind;
  /** What a row is. */
  readonly row: string;
  readonly columns: readonly MatchedColumn[];
  readonly feet: FootHeaders | null;
  /** Required columns that no header names, of those that can be asked for. */
  readonly lacking: readonly Column[];
  /** Headers of no known column. */
  readonly strangers: readonly string[];
}

/** One header, or several that differ by the foot. */
interface Place {
  readonly header: string;
  readonly words: string;
  readonly unit: string | null;
  readonly at: readonly number[];
  readonly pattern: FootPattern | null;
}

const FEWEST = 2;

/** The table whose columns are named by most headers of a file, with no more lacking than can be asked for; null: none is named by two. */
export function tableMatch(header: readonly string[]): TableMatch | null {
  const feet = footPatterns(header);
  const matches = fileTables.flatMap(({ kind, row, columns }) => {
    const wide = kind === "visits" ? feet : null;
    return matched(kind, row, columns, placesOf(header, wide), wide) ?? [];
  });
  const [best] = matches.sort((a, b) => b.columns.length - a.columns.length || a.lacking.length - b.lacking.length);
  return best !== undefined && best.columns.length >= FEWEST ? best : null;
}

function placesOf(header: readonly string[], feet: FootHeaders | null): Place[] {
  const inPattern = new Set((feet?.patterns ?? []).flatMap(({ at }) => [...at.values()]));
  const plain = header.flatMap((name, index) =>
    inPattern.has(index) || name.trim() === ""
      ? []
      : [{ header: name.trim(), ...headerMeaning(name), at: [index], pattern: null }],
  );
  const each = (feet?.patterns ?? []).map((pattern) => {
    const meaning = headerMeaning(pattern.pattern.replace("{foot}", " "));
    return { header: pattern.pattern, ...meaning, at: [...pattern.at.values()], pattern };
  });
  return [...plain, ...each];
}

function matched(
  kind: TableKind,
  row: string,
  columns: readonly Column[],
  places: readonly Place[],
  feet: FootHeaders | null,
): TableMatch | null {
  const wide = feet !== null;
  const candidates = columns.flatMap((column) => {
    if (wide && column.name === "foot") return [];
    const names = [column.name.replaceAll("_", " "), headerMeaning(column.name).words, ...(columnNames[kind][column.name] ?? [])];
    return places.flatMap((place) => {
      const rank = names.indexOf(place.words);
      const allowed = place.pattern === null || column.level === "foot-visit";
      return rank === -1 || !allowed ? [] : [{ column, place, rank }];
    });
  });
  candidates.sort((a, b) => a.rank - b.rank);
  const taken = new Map<Column, Place>();
  const used = new Set<Place>();
  for (const { column, place } of candidates) {
    if (taken.has(column) || used.has(place)) continue;
    taken.set(column, place);
    used.add(place);
  }
  const found = columns.flatMap((column): MatchedColumn[] => {
    const place = taken.get(column);
    if (place === undefined) return [];
    const rivals = candidates.filter((each) => each.column === column && !used.has(each.place)).map((each) => each.place.header);
    return [{ column, header: place.header, at: place.at, unit: place.unit, rivals }];
  });
  const lacking = columns.filter((column) => column.required && !taken.has(column) && !(wide && column.name === "foot"));
  const measured = found.some(({ column }) => column.level === "foot-visit");
  const canBeAsked = ({ name }: Column) => name === "gauge_id" || (name === "foot" && measured);
  if (!lacking.every(canBeAsked)) return null;
  const strangers = places.filter((place) => !used.has(place)).map(({ header }) => header);
  return { kind, row, columns: found, feet, lacking, strangers };
}
