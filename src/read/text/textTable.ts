import { ownCopy } from "./ownCopy.js";

/** What is known of texts, found by a piece of a longer text without cutting it out. */
export interface TextTable<Value> {
  /** What is known of the letters of `text` from `start` up to `end`. */
  readonly find: (text: string, start: number, end: number) => Value | undefined;
  /** Remembers a text, if there is room for it. */
  readonly keep: (text: string, value: Value) => void;
  /** What is remembered. */
  readonly texts: ReadonlyMap<string, Value>;
}

interface Entry<Value> {
  readonly text: string;
  readonly value: Value;
  /** Another text with the same hash. */
  readonly next: Entry<Value> | undefined;
  readonly depth: number;
}

const MOST = 50_000;
const LONGEST = 200;
const MOST_OF_ONE_HASH = 8;

/**
 * A table of at most 50,000 texts of at most 200 letters. A million rows hold twenty million cells and few different ones: to cut each of them out only to find
 * that it is known costs more than all else that is done to it.
 */
export function textTable<Value>(): TextTable<Value> {
  const texts = new Map<string, Value>();
  const byHash = new Map<number, Entry<Value>>();
  // What the row before says, this one mostly says again.
  let last: Entry<Value> | undefined;
  return {
    texts,
    find(text, start, end) {
      if (last !== undefined && isSame(last.text, text, start, end)) return last.value;
      if (end - start > LONGEST) return undefined;
      let entry = byHash.get(hashOf(text, start, end));
      while (entry !== undefined && !isSame(entry.text, text, start, end)) entry = entry.next;
      last = entry;
      return entry?.value;
    },
    keep(text, value) {
      if (texts.size >= MOST || text.length > LONGEST) return;
      const hash = hashOf(text, 0, text.length);
      const next = byHash.get(hash);
      if (next !== undefined && next.depth >= MOST_OF_ONE_HASH) return;
      const own = ownCopy(text);
      texts.set(own, value);
      byHash.set(hash, { text: own, value, next, depth: (next?.depth ?? 0) + 1 });
    },
  };
}

/** FNV-1a of the UTF-16 code units, kept to 30 bits, which V8 holds without a box. */
function hashOf(text: string, start: number, end: number): number {
  let hash = 0x811c9dc5;
  for (let index = start; index < end; index++) hash = Math.imul(hash ^ text.charCodeAt(index), 0x01000193);
  return hash & 0x3fffffff;
}

function isSame(known: string, text: string, start: number, end: number): boolean {
  if (known.length !== end - start) return false;
  for (let index = 0; index < known.length; index++) if (known.charCodeAt(index) !== text.charCodeAt(start + index)) return false;
  return true;
}
