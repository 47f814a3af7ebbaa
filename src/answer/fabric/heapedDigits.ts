import { fabricIssue } from "./fabricIssue.js";
import { fabricMeasures } from "../../derive/fabric/fabricMeasures.js";
import { holm } from "../../estimate/holm.js";
import { betaCumulative } from "../../estimate/numeric/betaCumulative.js";
import type { FootVisit } from "../../study/FootVisit.js";
import { grouped } from "../../study/grouped.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";

/** Fewer readings of one observer say nothing about digits. Common practice, no source. */
const FEWEST = 40;
/** Readings of one horse hang together, so that a small p alone is not enough: so many times what is expected is asked too. Common practice, no source. */
const TIMES_EXPECTED = 1.6;
/** Chance of any false finding among all observers and measures, at most. */
const ANY_FALSE = 0.001;
const STEP = 5;
/** One whole number in five ends in 0 or 5. */
const SHARE = 1 / STEP;

interface Heap {
  readonly observerId: string | null;
  readonly measure: (typeof fabricMeasures)[number];
  readonly rows: readonly FootVisit[];
  readonly values: readonly number[];
  readonly onFives: number;
  /** Readings one to either side of a multiple of five. */
  readonly beside: number;
  readonly p: number;
}

/**
 * Observers whose readings of a measure end in 0 or 5 far too often: they round, or the gauge was left where it stood.
 *
 * Method: readings are rounded to whole millimetres or degrees. One in five is expected on multiples of five; the count is held to that by an
 * exact binomial test, adjusted after Holm for all observers and measures at 0.001. It must also be 1.6 times that, and 1.6 times what lies
 * one beside, so that a narrow distribution about a multiple of five is no heap.
 *
 * Missing: observers with fewer than 40 readings of a measure are not judged.
 *
 * Source: digit preference is common practice, no source; the limits are own.
 */
export function heapedDigits({ visits }: Pick<Study, "visits">): Issue[] {
  const heaps = [...grouped(visits, ({ observerId }) => observerId)].flatMap(([observerId, ofObserver]) =>
    fabricMeasures.flatMap((measure): Heap[] => {
      const rows = ofObserver.filter((row) => row[measure.field] !== null);
      if (rows.length < FEWEST) return [];
      const values = rows.flatMap((row) => row[measure.field] ?? []);
      const whole = values.map(Math.round);
      const onFives = whole.filter((value) => value % STEP === 0).length;
      const beside = whole.filter((value) => (value - 1) % STEP === 0 || (value + 1) % STEP === 0).length;
      const p = onFives === 0 ? 1 : betaCumulative(SHARE, onFives, whole.length - onFives + 1);
      return [{ observerId, measure, rows, values, onFives, beside, p }];
    }),
  );
  const adjusted = holm(heaps.map(({ p }) => p));
  return heaps
    .filter(({ onFives, beside, values }, place) => {
      const often = onFives >= TIMES_EXPECTED * SHARE * values.length && onFives >= (TIMES_EXPECTED * beside) / 2;
      return often && (adjusted[place] ?? 1) <= ANY_FALSE;
    })
    .map(issueOf);
}

function issueOf({ observerId, measure, rows, values, onFives, beside }: Heap): Issue {
  const times = [...grouped(values, (value) => value)]
    .filter(([value]) => value % STEP === 0)
    .map(([value, same]) => ({ value, count: same.length }))
    .sort((a, b) => b.count - a.count)
    .slice(0, 2)
    .map(({ value, count }) => `${value} ${count} times`);
  const [first] = rows;
  return fabricIssue({
    file: first?.file ?? "visits.csv",
    line: first?.line ?? null,
    column: measure.column,
    code: "heaped_digits",
    found:
      `${onFives} of ${values.length} readings of ${measure.title}${observerId === null ? "" : ` by ${observerId}`} end in 0 or 5, where ` +
      `${Math.round(SHARE * values.length)} are expected (${times.join(", ")}; ${beside} lie one beside)`,
    hint: `Ask to what step ${measure.title} is read, and whether the gauge was set anew each time; small differences in it mean nothing.`,
  });
}
