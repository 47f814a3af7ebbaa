import { readdir } from "node:fs/promises";
import type { IssueLog } from "../report/issueLog.js";
import { mappingMessages } from "../report/mappingMessages.js";

/** Warns of every CSV or TSV file that lies in the study folder itself and was not read; rows set aside by an earlier check are passed over. */
export async function warnOfFilesNotRead(folder: string, read: readonly string[], log: IssueLog): Promise<void> {
  const names = await readdir(folder).catch(() => []);
  const known = new Set(read.map((name) => name.replace(/^(\.[/\\])+/, "")));
  for (const file of names.sort()) {
    if (!/\.(csv|tsv)$/i.test(file) || /\.set-aside\.csv$/i.test(file) || known.has(file)) continue;
    log.add(mappingMessages.fileNotRead(), { file, line: null, row: null, column: null, value: null });
  }
}
