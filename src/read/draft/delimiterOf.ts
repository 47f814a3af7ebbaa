import { delimiterWord } from "../report/delimiterWord.js";
import { quoteScan } from "../text/quoteScan.js";

/** What parts the cells of a text, and the evidence in words. */
export interface FoundDelimiter {
  /** null: none, or more than one that parts the lines equally well. */
  readonly delimiter: string | null;
  readonly evidence: string;
}

const LOOKED_AT = 200;
/** This share of the lines must have as many cells as the first. */
const ENOUGH = 0.8;

/** The mark that gives all lines as many cells as the first line, outside quotes; of two, the one that parts more lines so. */
export function delimiterOf(lines: readonly string[]): FoundDelimiter {
  const text = lines.filter((line) => line.trim() !== "").slice(0, LOOKED_AT);
  const found = [",", ";", "\t", "|"].flatMap((delimiter) => {
    const counts = text.map((line) => quoteScan(line, delimiter, { relaxed: true }).delimiters);
    const [first = 0] = counts;
    const alike = counts.filter((count) => count === first).length;
    return first === 0 || alike < text.length * ENOUGH ? [] : [{ delimiter, first, alike }];
  });
  found.sort((a, b) => b.alike - a.alike || b.first - a.first);
  const [best, next] = found;
  if (best === undefined) return { delimiter: null, evidence: "no mark parts all lines into as many cells as the first" };
  if (next?.alike === best.alike && next.first === best.first) {
    const both = `${delimiterWord(best.delimiter)}s and ${delimiterWord(next.delimiter)}s`;
    return { delimiter: null, evidence: `${both} part the lines equally well` };
  }
  const evidence = `${best.alike} of ${text.length} lines have ${best.first + 1} cells parted by ${delimiterWord(best.delimiter)}s`;
  return { delimiter: best.delimiter, evidence };
}
