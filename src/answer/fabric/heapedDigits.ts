import { fabricMeasures } from "../../derive/fabric/fabricMeasures.js";
import type { FootTable } from "../../derive/fabric/FootTable.js";
import { standingFeet } from "../../derive/fabric/standingFeet.js";
import { tableOfFeet } from "../../derive/fabric/tableOfFeet.js";
import { holm } from "../../estimate/holm.js";
import { tUpper } from "../../estimate/numeric/tUpper.js";
import { grouped } from "../../study/grouped.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";
import { fabricIssue } from "./fabricIssue.js";
import { falseAlarmShare } from "./falseAlarmShare.js";

/** Fewer readings of one observer say nothing about digits. Common practice, no source. */
const FEWEST = { readings: 40, horses: 8 };
/** A small p alone is not enough: so many times what is expected is asked too. Common practice, no source. */
const TIMES_EXPECTED = 1.6;
const STEP = 5;
/** One whole number in five ends in 0 or 5. */
const EXPECTED = 1 / STEP;

interface Heap {
  readonly observerId: string | null;
  readonly measure: number;
  readings: number;
  onFives: number;
  /** Readings one to either side of a multiple of five. */
  beside: number;
  /** Share of each horse's readings that lie on a multiple of five. */
  readonly shares: number[];
}

/**
 * Observers whose readings of a measure end in 0 or 5 far too often: they round, or the gauge was left where it stood.
 *
 * Method: readings are rounded to whole millimetres or degrees. One in five is expected on multiples of five. Readings of one horse hang
 * together, so that each horse counts once, with its share of such readings: their mean is held to one in five by a one-sided t test,
 * adjusted after Holm for all observers and measures at `falseAlarmShare`. In all readings there must also be 1.6 times what is expected, and
 * 1.6 times what lies one beside, so that a narrow distribution about a multiple of five is no heap.
 *
 * Missing: observers with fewer than 40 readings of a measure, or of fewer than 8 horses, are not judged.
 *
 * Source: digit preference is common practice, no source; the limits are own.
 */
export function heapedDigits({ visits }: Pick<Study, "visits">, table: FootTable = tableOfFeet(visits)): Issue[] {
  const heaps = heapsOf(table).filter(({ readings, shares }) => readings >= FEWEST.readings && shares.length >= FEWEST.horses);
  const adjusted = holm(heaps.map(({ shares }) => pOf(shares)));
  return heaps
    .filter(({ onFives, beside, readings }, place) => {
      const often = onFives >= TIMES_EXPECTED * EXPECTED * readings && onFives >= (TIMES_EXPECTED * beside) / 2;
      return often && (adjusted[place] ?? 1) <= falseAlarmShare;
    })
    .map((heap) => issueOf(heap, table));
}

function heapsOf({ sets, starts, values }: FootTable): Heap[] {
  const heaps = new Map<string | null, Heap[]>();
  const measures = fabricMeasures.length;
  const heapsOfObserver = (observerId: string | null): Heap[] => {
    const known = heaps.get(observerId);
    if (known !== undefined) return known;
    const made = fabricMeasures.map((_, measure) => ({ observerId, measure, readings: 0, onFives: 0, beside: 0, shares: [] }));
    heaps.set(observerId, made);
    return made;
  };
  for (let horse = 0; horse + 1 < starts.length; horse++) {
    const [from, to] = [starts[horse] ?? 0, starts[horse + 1] ?? 0];
    const places = Array.from({ length: to - from }, (_, at) => from + at);
    for (const [observerId, own] of grouped(places, (place) => sets[place]?.observerId ?? null)) {
      for (const heap of heapsOfObserver(observerId)) {
        let [readings, onFives] = [0, 0];
        for (const place of own) {
          for (let foot = 0; foot < standingFeet.length; foot++) {
            const value = values[(place * standingFeet.length + foot) * measures + heap.measure] ?? NaN;
            if (Number.isNaN(value)) continue;
            const digit = Math.round(value) % STEP;
            readings += 1;
            if (digit === 0) onFives += 1;
            else if (digit === 1 || digit === STEP - 1) heap.beside += 1;
          }
        }
        if (readings === 0) continue;
        heap.readings += readings;
        heap.onFives += onFives;
        heap.shares.push(onFives / readings);
      }
    }
  }
  return [...heaps.values()].flat();
}

/** Chance of a mean share so far above one in five, from the horses as units. */
function pOf(shares: readonly number[]): number {
  const horses = shares.length;
  const mean = shares.reduce((sum, share) => sum + share, 0) / horses;
  const squares = shares.reduce((sum, share) => sum + (share - mean) ** 2, 0);
  // Where all horses agree there is no spread to go by, and the count of horses decides.
  if (squares === 0) return mean > EXPECTED ? EXPECTED ** horses : 1;
  return tUpper((mean - EXPECTED) / Math.sqrt(squares / (horses - 1) / horses), horses - 1);
}

function issueOf({ observerId, measure, readings, onFives, beside, shares }: Heap, { sets }: FootTable): Issue {
  const { field = "toeAngleDeg", column = "", title = "" } = fabricMeasures[measure] ?? {};
  const rows = sets
    .filter((set) => set.observerId === observerId)
    .flatMap((set) => Object.values(set.rows))
    .filter((row) => row[field] !== null);
  const first = rows.reduce((top, row) => (top === undefined || row.line < top.line ? row : top), rows[0]);
  const times = [...grouped(rows, (row) => row[field] ?? 0)]
    .filter(([value]) => value % STEP === 0)
    .map(([value, same]) => ({ value, count: same.length }))
    .sort((a, b) => b.count - a.count || a.value - b.value)
    .slice(0, 2)
    .map(({ value, count }) => `${value} ${count} times`);
  return fabricIssue({
    file: first?.file ?? "visits.csv",
    line: first?.line ?? null,
    column,
    code: "heaped_digits",
    found:
      `${onFives} of ${readings} readings of ${title}${observerId === null ? "" : ` by ${observerId}`}, of ${shares.length} horses, end in 0 or 5, ` +
      `where ${Math.round(EXPECTED * readings)} are expected (${times.join(", ")}; ${beside} lie one beside)`,
    hint: `Ask to what step ${title} is read, and whether the gauge was set anew each time; small differences in it mean nothing.`,
  });
}
