import { EstimateError } from "./EstimateError.js";
import { logFactorial } from "./numeric/logFactorial.js";
import { requireCount } from "./numeric/requireCount.js";

/** Steps taken before a table is called too large: some seconds. */
const MOST_STEPS = 3_000_000;

/** Fisher's exact test of a table of any size. */
export interface FisherExactTableTest {
  /** Probability of all tables with the same margins that are no likelier than the one seen; null when one row or column is filled. */
  readonly p: number | null;
  readonly n: number;
  /** Rows and columns that hold something. */
  readonly rows: number;
  readonly columns: number;
}

/** What is left of the row totals after some columns, with every likelihood it can be reached with and in how many ways. */
interface Node {
  readonly left: readonly number[];
  readonly past: Map<number, { readonly log: number; ways: number }>;
}

/**
 * Fisher's exact test, two-sided, of a table with any number of rows and columns, such as thrush grade by bedding.
 *
 * Method: all tables with the same margins are walked column by column; states with the same row totals left are merged, and
 * ways to reach a state with the same likelihood are counted together. The last two columns are summed from a sorted list.
 * Likelihoods within a relative 1e-7 count as equal. Empty rows and columns are left out.
 *
 * Missing: whoever counts leaves the missing out and says how many there were.
 *
 * Errors: `length_mismatch` for rows of unlike length; `not_a_number`, `not_a_count`; `empty` when nothing is counted;
 * `out_of_range` when the table has too many like it to be walked, where a chi-square test serves.
 *
 * Source: Freeman GH, Halton JH (1951) Biometrika 38:141-149; states merged as in Mehta CR, Patel NR (1983) J Am Stat Assoc
 * 78:427-434.
 */
export function fisherExactTable(matrix: readonly (readonly number[])[]): FisherExactTableTest {
  if (matrix.some((row) => row.length !== matrix[0]!.length)) {
    throw new EstimateError(
      "length_mismatch",
      "The rows of the table differ in length.",
      "Give every row a count for every column.",
    );
  }
  const cells = matrix.flat();
  const n = cells.reduce((sum, cell) => sum + requireCount("cell of the table", cell), 0);
  if (n === 0) throw new EstimateError("empty", "The table is empty.", "Give at least one observation.");
  const sums = (table: readonly (readonly number[])[]): number[] =>
    table.map((row) => row.reduce((a, b) => a + b, 0)).filter((sum) => sum > 0);
  const rows = sums(matrix);
  const columns = sums(matrix[0]!.map((_, j) => matrix.map((row) => row[j]!)));
  const size = { n, rows: rows.length, columns: columns.length };
  if (rows.length < 2 || columns.length < 2) return { p: null, ...size };
  const observed = -cells.reduce((sum, cell) => sum + logFactorial(cell), 0);
  const [short, long] = rows.length <= columns.length ? [rows, columns] : [columns, rows];
  return { p: Math.min(1, share(short, long, observed)), ...size };
}

/** Probability of the tables with these margins whose log weight, minus the log factorials of the cells, is at most `observed`. */
function share(rows: readonly number[], columns: readonly number[], observed: number): number {
  const order = [...columns].sort((a, b) => a - b);
  const n = rows.reduce((a, b) => a + b, 0);
  const logs = Array.from({ length: n + 1 }, (_, x) => logFactorial(x));
  const work = { left: MOST_STEPS };
  let nodes: readonly Node[] = [{ left: rows, past: new Map([[0, { log: 0, ways: 1 }]]) }];
  for (const sum of order.slice(0, -2)) nodes = afterColumn(nodes, sum, logs, work);
  // Weights of all tables with these margins add up to n! over the factorials of the margins.
  const all = logs[n]! - [...rows, ...columns].reduce((sum, margin) => sum + logs[margin]!, 0);
  let total = 0;
  for (const { left, past } of nodes) {
    const ends: number[] = [];
    allocations(left, order.at(-2)!, logs, (rest, log) => {
      spend(work, 1);
      ends.push(log - rest.reduce((sum, x) => sum + logs[x]!, 0));
    });
    const sorted = Float64Array.from(ends).sort();
    let running = 0;
    const cumulative = sorted.map((log) => (running += Math.exp(log - all)));
    for (const { log, ways } of past.values()) {
      const count = countUpTo(sorted, observed + 1e-7 - log);
      if (count > 0) total += ways * Math.exp(log) * cumulative[count - 1]!;
    }
  }
  return total;
}

function afterColumn(
  nodes: readonly Node[],
  columnSum: number,
  logs: readonly number[],
  work: { left: number },
): readonly Node[] {
  const next = new Map<string, Node>();
  for (const { left, past } of nodes) {
    allocations(left, columnSum, logs, (rest, log) => {
      const sorted = [...rest].sort((a, b) => a - b);
      const key = sorted.join(" ");
      const node = next.get(key) ?? { left: sorted, past: new Map<number, { log: number; ways: number }>() };
      next.set(key, node);
      spend(work, past.size);
      for (const before of past.values()) {
        const likelihood = Math.round((before.log + log) * 1e9);
        const same = node.past.get(likelihood);
        if (same === undefined) node.past.set(likelihood, { log: before.log + log, ways: before.ways });
        else same.ways += before.ways;
      }
    });
  }
  return [...next.values()];
}

/** Visits every way to take `sum` from the row totals `left`: the rest, and minus the log factorials of what was taken. */
function allocations(
  left: readonly number[],
  sum: number,
  logs: readonly number[],
  visit: (rest: readonly number[], log: number) => void,
): void {
  const room = left.map((_, i) => left.slice(i + 1).reduce((a, b) => a + b, 0));
  const rest = [...left];
  const place = (i: number, remaining: number, log: number): void => {
    if (i === left.length - 1) {
      rest[i] = left[i]! - remaining;
      visit(rest, log - logs[remaining]!);
      return;
    }
    for (let x = Math.max(0, remaining - room[i]!); x <= Math.min(left[i]!, remaining); x += 1) {
      rest[i] = left[i]! - x;
      place(i + 1, remaining - x, log - logs[x]!);
    }
  };
  place(0, sum, 0);
}

function spend(work: { left: number }, steps: number): void {
  work.left -= steps;
  if (work.left >= 0) return;
  throw new EstimateError(
    "out_of_range",
    "There are too many tables with these margins to walk through all of them.",
    "Join rows or columns, or use a chi-square test.",
  );
}

function countUpTo(sorted: Float64Array, limit: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! <= limit) low = middle + 1;
    else high = middle;
  }
  return low;
}
