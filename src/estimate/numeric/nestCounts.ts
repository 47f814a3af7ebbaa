import { logChoose } from "./logChoose.js";
import type { NestedCounts } from "./NestedCounts.js";

/** Rows as they come. Groups are numbered from 0 and every number occurs; an inner group lies within one outer group. */
interface NestedRows {
  /** Terms, one array a column, the intercept included. */
  readonly columns: readonly Float64Array[];
  readonly cases: Float64Array;
  readonly n: Float64Array;
  readonly outer: Int32Array;
  readonly inner: Int32Array;
}

/** Items 0 .. `key.length` - 1 in order of their key, in order of appearance within a key. */
function bucket(key: Int32Array): { readonly order: Int32Array; readonly start: Int32Array } {
  let keys = 0;
  for (const value of key) if (value >= keys) keys = value + 1;
  const start = new Int32Array(keys + 1);
  for (const value of key) start[value + 1]!++;
  for (let k = 0; k < keys; k++) start[k + 1]! += start[k]!;
  const next = start.slice();
  const order = new Int32Array(key.length);
  for (let item = 0; item < key.length; item++) order[next[key[item]!]!++] = item;
  return { order, start };
}

function outerOfInner(inner: Int32Array, outer: Int32Array): Int32Array {
  const found = new Int32Array(inner.reduce((most, value) => Math.max(most, value + 1), 0));
  for (let row = 0; row < inner.length; row++) found[inner[row]!] = outer[row]!;
  return found;
}

const FEW = 16;

/** Sorts in place; a few by insertion, which is quicker than the call of the library. */
function sorted(items: Int32Array, compare: (a: number, b: number) => number): Int32Array {
  if (items.length > FEW) return items.sort(compare);
  for (let i = 1; i < items.length; i++) {
    const item = items[i]!;
    let at = i;
    for (; at > 0 && compare(items[at - 1]!, item) > 0; at--) items[at] = items[at - 1]!;
    items[at] = item;
  }
  return items;
}

/** Lays rows out as {@link NestedCounts}: adds up rows with equal terms, keeps one of inner groups that are alike. */
export function nestCounts({ columns, cases, n, outer, inner }: NestedRows): NestedCounts {
  const terms = columns.length;
  const rows = bucket(inner);
  const groups = bucket(outerOfInner(inner, outer));
  const [outers, inners] = [groups.start.length - 1, rows.start.length - 1];
  const x = new Float64Array(cases.length * terms);
  const cellCases = new Float64Array(cases.length);
  const cellN = new Float64Array(cases.length);
  const innerStart = new Int32Array(inners + 1);
  const outerStart = new Int32Array(outers + 1);
  const copies = new Float64Array(inners);
  const placeOf = new Int32Array(inners);
  const compare = (a: number, b: number): number => {
    for (let t = 0; t < terms; t++) {
      const gap = columns[t]![a]! - columns[t]![b]!;
      if (gap !== 0) return gap;
    }
    return 0;
  };

  /** Writes the cells of an inner group from `cell` on; returns one past the last. */
  const lay = (group: number, cell: number): number => {
    const members = sorted(rows.order.subarray(rows.start[group], rows.start[group + 1]), compare);
    let at = cell - 1;
    for (let m = 0; m < members.length; m++) {
      const row = members[m]!;
      if (m === 0 || compare(members[m - 1]!, row) !== 0) {
        at++;
        for (let t = 0; t < terms; t++) x[at * terms + t] = columns[t]![row]!;
        cellCases[at] = cellN[at] = 0;
      }
      cellCases[at]! += cases[row]!;
      cellN[at]! += n[row]!;
    }
    return at + 1;
  };
  const hash = (from: number, to: number): number => {
    let sum = to - from;
    for (let k = from; k < to; k++) {
      sum = sum * 1.618 + cellCases[k]! + 0.577 * cellN[k]!;
      for (let t = 0; t < terms; t++) sum = sum * 1.414 + x[k * terms + t]!;
    }
    return sum;
  };
  const alike = (place: number, from: number, to: number): boolean => {
    const first = innerStart[place]!;
    if (innerStart[place + 1]! - first !== to - from) return false;
    for (let k = from; k < to; k++) {
      const twin = first + k - from;
      if (cellCases[k] !== cellCases[twin] || cellN[k] !== cellN[twin]) return false;
      for (let t = 0; t < terms; t++) if (x[k * terms + t] !== x[twin * terms + t]) return false;
    }
    return true;
  };

  let place = 0;
  for (let i = 0; i < outers; i++) {
    const seen = new Map<number, number>();
    for (let at = groups.start[i]!; at < groups.start[i + 1]!; at++) {
      const group = groups.order[at]!;
      const from = innerStart[place]!;
      const to = lay(group, from);
      const key = hash(from, to);
      const twin = seen.get(key);
      if (twin !== undefined && alike(twin, from, to)) {
        copies[twin]!++;
        placeOf[group] = twin;
        continue;
      }
      seen.set(key, place);
      copies[place] = 1;
      placeOf[group] = place;
      innerStart[++place] = to;
    }
    outerStart[i + 1] = place;
  }
  const cells = innerStart[place]!;
  let constant = 0;
  for (let row = 0; row < n.length; row++) if (n[row]! > 1) constant += logChoose(n[row]!, cases[row]!);
  return {
    terms,
    cells,
    inner: place,
    outer: outers,
    x: x.slice(0, cells * terms),
    cases: cellCases.slice(0, cells),
    n: cellN.slice(0, cells),
    innerStart: innerStart.slice(0, place + 1),
    outerStart,
    copies: copies.slice(0, place),
    placeOf,
    constant,
  };
}
