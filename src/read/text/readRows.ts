import type { LineFault } from "./LineFault.js";
import { recordFromLine, type RecordShape } from "./recordFromLine.js";
import { recordsOfLines } from "./recordsOfLines.js";
import type { TextBlock } from "./TextBlock.js";

/** Takes the rows of a file as they come. */
export interface RowSink {
  /** Number of cells of a row; null until the header is known. */
  width(): number | null;
  /** Whether these cells alone make a good row. */
  fits(cells: readonly string[]): boolean;
  row(cells: readonly string[], line: number, bareQuote: boolean): void;
  refused(fault: LineFault, line: number, text: string): void;
}

/**
 * Sends every record of a delimited text to a sink, with the physical line on which it starts. Blank lines are no records. Every other line
 * belongs to exactly one record or is refused with the reason; a faulty line never takes a following one with it.
 */
export async function readRows(blocks: AsyncIterable<TextBlock>, delimiter: string, sink: RowSink): Promise<void> {
  let kept: TextBlock = { lines: [], faults: new Map() };
  let line = 1;
  let used = 0;
  for await (const block of blocks) {
    kept = joined(kept, used, block);
    used = sendRows(kept, line, delimiter, sink, false);
    line += used;
  }
  sendRows(joined(kept, used, { lines: [], faults: new Map() }), line, delimiter, sink, true);
}

function joined(kept: TextBlock, used: number, next: TextBlock): TextBlock {
  const rest = kept.lines.slice(used);
  if (rest.length === 0) return next;
  const faults = new Map<number, LineFault>();
  for (const [index, fault] of kept.faults) if (index >= used) faults.set(index - used, fault);
  for (const [index, fault] of next.faults) faults.set(index + rest.length, fault);
  return { lines: [...rest, ...next.lines], faults };
}

/** Sends what can be decided and returns how many lines that took. */
function sendRows(block: TextBlock, firstLine: number, delimiter: string, sink: RowSink, last: boolean): number {
  const { lines, faults } = block;
  const plain = (line: string) => !line.includes('"');
  const quotedAt = lines.flatMap((line, index) => (plain(line) || faults.has(index) ? [] : [index]));
  const whole = recordsOfLines(
    quotedAt.map((index) => lines[index] ?? ""),
    delimiter,
  );
  const records = new Map(quotedAt.map((index, order) => [index, whole[order] ?? null]));
  const shape: RecordShape = {
    delimiter,
    get width() {
      return sink.width();
    },
    fits: (cells) => sink.fits(cells),
  };
  let index = 0;
  while (index < lines.length) {
    const text = lines[index] ?? "";
    const line = firstLine + index;
    const fault = faults.get(index);
    const cells = records.get(index);
    if (fault !== undefined) sink.refused(fault, line, text);
    else if (cells === undefined && text.trim() === "") {
      // A blank line is no record.
    } else if (cells === undefined) sink.row(text.split(delimiter), line, false);
    else if (cells !== null) sink.row(cells, line, false);
    else {
      const end = nextFault(faults, index) ?? lines.length;
      const found = recordFromLine(lines, index, end, last || end < lines.length, shape);
      if (found === "more") return index;
      if (found === "stray_quote") sink.refused(found, line, text);
      else {
        sink.row(found.cells, line, found.bareQuote);
        index += found.lines;
        continue;
      }
    }
    index += 1;
  }
  return index;
}

function nextFault(faults: TextBlock["faults"], from: number): number | undefined {
  let next: number | undefined;
  for (const index of faults.keys()) if (index > from && (next === undefined || index < next)) next = index;
  return next;
}
