import type { CutRecord } from "./CutRecord.js";
import type { LineFault } from "./LineFault.js";
import { recordCutter, type RecordCutter } from "./recordCutter.js";
import { recordSpan, type RecordShape } from "./recordSpan.js";
import { recordsOfTexts } from "./recordsOfTexts.js";
import type { TextBlock } from "./TextBlock.js";

/** Takes the rows of a file as they come. */
export interface RowSink {
  /** Number of cells of a row; null until the header is known. */
  width(): number | null;
  /** Whether these cells alone make a good row. */
  fits(cells: readonly string[]): boolean;
  /** `text` is the record as it stands in the file, without its last line end. */
  row(record: CutRecord, line: number, bareQuote: boolean, text: string): void;
  /** `bytes` are those of the line when its text does not give them back. */
  refused(fault: LineFault, line: number, text: string, bytes: Buffer | null): void;
}

const NOTHING: TextBlock = { lines: [], ends: "\n", faults: new Map(), bytes: new Map() };

/**
 * Sends every record of a delimited text to a sink, with the physical line on which it starts. Blank lines are no records. Every other line
 * belongs to exactly one record or is refused with the reason; a faulty line never takes a following one with it.
 */
export async function readRows(blocks: AsyncIterable<TextBlock>, delimiter: string, sink: RowSink): Promise<void> {
  const cutter = recordCutter(delimiter);
  let kept = NOTHING;
  let line = 1;
  let used = 0;
  for await (const block of blocks) {
    kept = joined(kept, used, block);
    used = sendRows(kept, line, { delimiter, cutter, sink, last: false });
    line += used;
  }
  sendRows(joined(kept, used, NOTHING), line, { delimiter, cutter, sink, last: true });
}

function joined(kept: TextBlock, used: number, next: TextBlock): TextBlock {
  const rest = kept.lines.slice(used);
  if (rest.length === 0) return next;
  const moved = <Value>(of: (block: TextBlock) => ReadonlyMap<number, Value>) => {
    const all = new Map<number, Value>();
    for (const [index, value] of of(kept)) if (index >= used) all.set(index - used, value);
    for (const [index, value] of of(next)) all.set(index + rest.length, value);
    return all;
  };
  const ends = kept.ends === next.ends ? next.ends : [...endsOf(kept).slice(used), ...endsOf(next)];
  return { lines: [...rest, ...next.lines], ends, faults: moved(({ faults }) => faults), bytes: moved(({ bytes }) => bytes) };
}

function endsOf({ lines, ends }: TextBlock): readonly string[] {
  return typeof ends === "string" ? lines.map(() => ends) : ends;
}

/** A record with quotes or a refused line, before its quotes are taken apart. */
interface Piece {
  readonly line: number;
  /** The record with LF for the line ends inside it. */
  readonly text: string;
  /** The record as it stands in the file. */
  readonly raw: string;
  readonly bytes: Buffer | null;
  readonly kind: "quoted" | "bare" | LineFault;
}

interface Sending {
  readonly delimiter: string;
  readonly cutter: RecordCutter;
  readonly sink: RowSink;
  /** The block is the last of the file. */
  readonly last: boolean;
}

/** Sends what can be decided and returns how many lines that took. */
function sendRows(block: TextBlock, firstLine: number, sending: Sending): number {
  const { lines, faults } = block;
  const { delimiter, sink, last } = sending;
  const shape: RecordShape = { delimiter, width: () => sink.width(), fits: (cells) => sink.fits(cells) };
  // A line without quotes stands here as its index alone: there may be a million.
  let pieces: (Piece | number)[] = [];
  let index = 0;
  while (index < lines.length) {
    const text = lines[index] ?? "";
    const line = firstLine + index;
    let taken = 1;
    const fault = faults.size === 0 ? undefined : faults.get(index);
    if (fault !== undefined) pieces.push({ line, text, raw: text, bytes: block.bytes.get(index) ?? null, kind: fault });
    else if (text.includes('"')) {
      const end = nextFault(faults, index) ?? lines.length;
      const span = recordSpan(lines, index, end, last || end < lines.length, shape);
      if (span === "more") break;
      if (span === "stray_quote") pieces.push({ line, text, raw: text, bytes: null, kind: span });
      else {
        taken = span.lines;
        const whole = taken === 1 ? { text, raw: text } : joinedLines(block, index, taken);
        pieces.push({ line, ...whole, bytes: null, kind: span.bareQuote ? "bare" : "quoted" });
      }
    } else if (text.trim() !== "") pieces.push(index);
    index += taken;
    // What makes a good row is known only once the header is.
    if (sink.width() === null) {
      send(pieces, block, firstLine, sending);
      pieces = [];
    }
  }
  send(pieces, block, firstLine, sending);
  return index;
}

function joinedLines({ lines, ends }: TextBlock, from: number, count: number): Pick<Piece, "text" | "raw"> {
  const taken = lines.slice(from, from + count);
  const end = (index: number) => (typeof ends === "string" ? ends : (ends[from + index] ?? ""));
  const raw = taken.map((line, index) => (index === count - 1 ? line : line + end(index))).join("");
  return { text: taken.join("\n"), raw };
}

function send(pieces: readonly (Piece | number)[], { lines }: TextBlock, firstLine: number, sending: Sending): void {
  const { delimiter, cutter, sink } = sending;
  const others = pieces.filter((piece) => typeof piece !== "number");
  const textsOf = (kind: Piece["kind"]) => others.filter((piece) => piece.kind === kind).map(({ text }) => text);
  const records = {
    quoted: recordsOfTexts(textsOf("quoted"), delimiter, false).values(),
    bare: recordsOfTexts(textsOf("bare"), delimiter, true).values(),
  };
  for (const piece of pieces) {
    if (typeof piece === "number") {
      const text = lines[piece] ?? "";
      sink.row(cutter.plain(text), firstLine + piece, false, text);
      continue;
    }
    const { line, text, raw, bytes, kind } = piece;
    if (kind === "quoted" || kind === "bare") {
      const cells = records[kind].next().value ?? null;
      if (cells === null) sink.refused("stray_quote", line, raw, null);
      else sink.row(cutter.parted(cells), line, kind === "bare", raw);
    } else sink.refused(kind, line, text, bytes);
  }
}

function nextFault(faults: TextBlock["faults"], from: number): number | undefined {
  let next: number | undefined;
  for (const index of faults.keys()) if (index > from && (next === undefined || index < next)) next = index;
  return next;
}
