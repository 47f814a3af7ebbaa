import type { LineFault } from "./LineFault.js";
import { recordSpan, type RecordShape } from "./recordSpan.js";
import { recordsOfTexts } from "./recordsOfTexts.js";
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

/** A record or a refused line, before its quotes are taken apart. */
interface Piece {
  readonly line: number;
  readonly text: string;
  readonly kind: "plain" | "quoted" | "bare" | LineFault;
}

/** Sends what can be decided and returns how many lines that took. */
function sendRows({ lines, faults }: TextBlock, firstLine: number, delimiter: string, sink: RowSink, last: boolean): number {
  const shape: RecordShape = { delimiter, width: () => sink.width(), fits: (cells) => sink.fits(cells) };
  let pieces: Piece[] = [];
  let index = 0;
  while (index < lines.length) {
    const text = lines[index] ?? "";
    const line = firstLine + index;
    let taken = 1;
    const fault = faults.get(index);
    if (fault !== undefined) pieces.push({ line, text, kind: fault });
    else if (text.includes('"')) {
      const end = nextFault(faults, index) ?? lines.length;
      const span = recordSpan(lines, index, end, last || end < lines.length, shape);
      if (span === "more") break;
      if (span === "stray_quote") pieces.push({ line, text, kind: span });
      else {
        taken = span.lines;
        const whole = taken === 1 ? text : lines.slice(index, index + taken).join("\n");
        pieces.push({ line, text: whole, kind: span.bareQuote ? "bare" : "quoted" });
      }
    } else if (text.trim() !== "") pieces.push({ line, text, kind: "plain" });
    index += taken;
    // What makes a good row is known only once the header is.
    if (sink.width() === null) {
      send(pieces, delimiter, sink);
      pieces = [];
    }
  }
  send(pieces, delimiter, sink);
  return index;
}

function send(pieces: readonly Piece[], delimiter: string, sink: RowSink): void {
  const textsOf = (kind: Piece["kind"]) => pieces.filter((piece) => piece.kind === kind).map(({ text }) => text);
  const records = {
    quoted: recordsOfTexts(textsOf("quoted"), delimiter, false).values(),
    bare: recordsOfTexts(textsOf("bare"), delimiter, true).values(),
  };
  for (const { line, text, kind } of pieces) {
    if (kind === "plain") sink.row(text.split(delimiter), line, false);
    else if (kind === "quoted" || kind === "bare") {
      const cells = records[kind].next().value ?? null;
      if (cells === null) sink.refused("stray_quote", line, text);
      else sink.row(cells, line, kind === "bare");
    } else sink.refused(kind, line, text);
  }
}

function nextFault(faults: TextBlock["faults"], from: number): number | undefined {
  let next: number | undefined;
  for (const index of faults.keys()) if (index > from && (next === undefined || index < next)) next = index;
  return next;
}
