import type { Column } from "../../study/Column.js";
import { messages } from "../report/messages.js";
import type { Fault } from "../report/Fault.js";
import { ownCopy } from "../text/ownCopy.js";
import { textTable } from "../text/textTable.js";
import type { CellReading } from "../mapping/CellReading.js";
import { wordKey } from "../mapping/wordKey.js";
import type { Zod } from "../Zod.js";
import { cellSchema } from "./cellSchema.js";
import type { CellValue } from "./CellValue.js";

/** What became of one text of a column. */
export interface Decision {
  readonly value: CellValue;
  /** `warning`: the value is kept. Otherwise the value is null. */
  readonly fault: Fault | null;
  /** How many cells held this text; kept by the reader of the table. */
  count: number;
}

/** Decides the cells of one column. */
export interface CellDecider {
  readonly column: Column;
  /** The decision for a raw cell, the letters of `text` from `start` up to `end`; the same object for the same cell while it is remembered. */
  readonly decide: (text: string, start?: number, end?: number) => Decision;
  /** The text as the column table would write it; null when it is not of the form that `study.json` declares. */
  readonly plain: (text: string) => string | null;
  /** Whether `study.json` has the values converted from another unit. */
  readonly converts: boolean;
  /** Remembered texts that were counted. */
  readonly texts: ReadonlyMap<string, Decision>;
}

const MISSING_WORDS = new Set(["NA", "N/A", "#N/A", "NaN", "NULL", "null", "-", "?"]);

/**
 * A decider for one column: each distinct text is checked once, and at most 50,000 of them are remembered. `reading` says how the texts of a
 * file of another make become those of the table.
 */
export function cellDecider(zod: Zod, column: Column, reading: CellReading | null = null): CellDecider {
  // Many columns of a table are in no file: their schemas are never made.
  let made: ReturnType<typeof cellSchema> | null = null;
  const schema = () => (made ??= cellSchema(zod, column));
  const { find, keep, texts } = textTable<Decision>();
  const decide = (raw: string, start = 0, end = raw.length): Decision => {
    const known = find(raw, start, end);
    if (known !== undefined) return known;
    const text = ownCopy(raw.slice(start, end));
    const { value, fault } = verdict(column, schema, text.trim(), reading);
    const decision = { value, fault, count: 0 };
    keep(text, decision);
    return decision;
  };
  const plain = (text: string) => (reading === null ? text : plainText(text.trim(), reading));
  return { column, decide, plain, converts: reading?.converts ?? false, texts };
}

type Verdict = Omit<Decision, "count">;

function verdict(
  column: Column,
  schema: () => ReturnType<typeof cellSchema>,
  text: string,
  reading: CellReading | null,
): Verdict {
  if (text === "") return nothing(column);
  if (reading === null)
    return column.type !== "text" && MISSING_WORDS.has(text) ? missingWord(column, text) : checked(column, schema, text, text);
  const plain = plainText(text, reading);
  if (plain === "") return nothing(column);
  if (plain === text && column.type !== "text" && MISSING_WORDS.has(text)) return missingWord(column, text);
  if (plain !== null) return checked(column, schema, plain, text, reading);
  return { value: null, fault: messages.badCell(column, text, "invalid_format", { hint: reading.hint }) };
}

function plainText(text: string, { words, translate }: CellReading): string | null {
  const word = words.get(wordKey(text));
  return word === undefined ? translate(text) : (word ?? "");
}

function nothing(column: Column): Verdict {
  return { value: null, fault: column.required ? messages.requiredEmpty(column) : null };
}

function missingWord(column: Column, text: string): Verdict {
  return { value: null, fault: messages.missingWord(column, text) };
}

function checked(
  column: Column,
  schema: () => ReturnType<typeof cellSchema>,
  plain: string,
  text: string,
  reading: CellReading | null = null,
): Verdict {
  const converted = reading?.converts === true ? plain : null;
  const result = schema().safeParse(plain);
  if (!result.success) {
    const code = result.error.issues[0]?.code ?? "custom";
    return { value: null, fault: messages.badCell(column, text, code, { converted, hint: reading?.hint ?? null }) };
  }
  const value = result.data;
  const [low, high] = column.soft ?? [-Infinity, Infinity];
  const unusual = typeof value === "number" && (value < low || value > high);
  return { value, fault: unusual ? messages.unusual(column, text, converted) : null };
}
