import type { Column } from "../../study/Column.js";
import { messages } from "../report/messages.js";
import type { Fault } from "../report/Fault.js";
import { ownCopy } from "../text/ownCopy.js";
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
  /** The decision for a raw cell; the same object for the same text while it is remembered. */
  readonly decide: (text: string) => Decision;
  /** Remembered texts that were counted. */
  readonly texts: ReadonlyMap<string, Decision>;
}

const REMEMBERED = 50_000;
const LONGEST_REMEMBERED = 200;
const MISSING_WORDS = new Set(["NA", "N/A", "#N/A", "NaN", "NULL", "null", "-", "?"]);

/** A decider for one column: each distinct text is checked once, and at most 50,000 of them are remembered. */
export function cellDecider(zod: Zod, column: Column): CellDecider {
  const schema = cellSchema(zod, column);
  const texts = new Map<string, Decision>();
  const decide = (raw: string): Decision => {
    const known = texts.get(raw);
    if (known !== undefined) return known;
    const text = ownCopy(raw);
    const { value, fault } = verdict(column, schema, text.trim());
    const decision = { value, fault, count: 0 };
    if (texts.size < REMEMBERED && text.length <= LONGEST_REMEMBERED) texts.set(text, decision);
    return decision;
  };
  return { column, decide, texts };
}

function verdict(column: Column, schema: ReturnType<typeof cellSchema>, text: string): Omit<Decision, "count"> {
  if (text === "") return { value: null, fault: column.required ? messages.requiredEmpty(column) : null };
  if (column.type !== "text" && MISSING_WORDS.has(text)) return { value: null, fault: messages.missingWord(column, text) };
  const result = schema.safeParse(text);
  if (!result.success) return { value: null, fault: messages.badCell(column, text, result.error.issues[0]?.code ?? "custom") };
  const value = result.data;
  const [low, high] = column.soft ?? [-Infinity, Infinity];
  const unusual = typeof value === "number" && (value < low || value > high);
  return { value, fault: unusual ? messages.unusual(column, text) : null };
}
