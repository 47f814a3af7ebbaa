import { quoted } from "../report/quoted.js";
import { cellsOf } from "../text/cellsOf.js";
import { isBlank } from "../text/isBlank.js";
import { openText } from "../text/openText.js";
import { readRows } from "../text/readRows.js";
import type { TextBlock } from "../text/TextBlock.js";
import { delimiterOf } from "./delimiterOf.js";
import type { Sample } from "./Sample.js";

const MOST_LINES = 20_000;

/**
 * Looks at the first 20,000 lines or so of a delimited text file. Bytes that are no UTF-8 are taken as Windows-1252, which is said.
 *
 * @throws StudyError `not_csv_text` for a workbook and the like, `file_unreadable` when the system refuses.
 */
export async function sampled(path: string, file: string): Promise<Sample> {
  let text = await beginning(path, file);
  let evidence: string | null = text.encoding === "utf-16" ? "it begins with the mark of UTF-16" : null;
  const strange = text.blocks.flatMap(({ faults }) => [...faults.values()]).some((fault) => fault === "not_utf8");
  if (strange) {
    text = await beginning(path, file, "windows-1252");
    evidence = `it holds bytes that are no UTF-8; as Windows-1252 they read ${exampleOf(text.blocks)}`;
  }
  const { delimiter, evidence: delimiterEvidence } = delimiterOf(text.blocks.flatMap(({ lines }) => lines).slice(0, MOST_LINES));
  const rows: { cells: readonly string[]; line: number }[] = [];
  const seen: { header: readonly string[] | null } = { header: null };
  await readRows(each(text.blocks), delimiter ?? ",", {
    width: () => seen.header?.length ?? null,
    fits: (cells) => cells.length === seen.header?.length,
    row(cut, line) {
      if (isBlank(cut)) return;
      const cells = cellsOf(cut);
      if (seen.header === null) seen.header = cells;
      else if (cells.length >= seen.header.length) rows.push({ cells, line });
    },
    refused: () => undefined,
  });
  return {
    file,
    encoding: strange ? "windows-1252" : null,
    encodingEvidence: evidence,
    delimiter,
    delimiterEvidence,
    header: seen.header ?? [],
    rows,
    cut: text.cut,
  };
}

async function beginning(path: string, file: string, stated?: "windows-1252") {
  const { blocks, encoding } = openText(path, file, stated);
  const taken: TextBlock[] = [];
  let lines = 0;
  let cut = false;
  for await (const block of blocks) {
    cut = lines > MOST_LINES;
    if (cut) break;
    taken.push(block);
    lines += block.lines.length;
  }
  return { blocks: taken, encoding: encoding(), cut };
}

async function* each(blocks: readonly TextBlock[]): AsyncGenerator<TextBlock> {
  for (const block of blocks) yield await Promise.resolve(block);
}

function exampleOf(blocks: readonly TextBlock[]): string {
  for (const { lines } of blocks) {
    for (const line of lines) {
      const word = /[\p{L}\p{N}]*[\u0080-\uffff][\p{L}\p{N}]*/u.exec(line)?.[0];
      if (word !== undefined) return quoted(word);
    }
  }
  return "as other marks";
}
