import type { CellRun } from "./CellRun.js";
import { streamText } from "./streamText.js";

/** Something that did not stop the run, but that its reader should know. @private */
export interface RunWarning {
  /** Place among the code cells that were run, from 1; null for the run as a whole. */
  readonly cell: number | null;
  readonly message: string;
}

function excerpt(text: string): string {
  const line = text.trim().replace(/\s+/g, " ");
  return line.length > 200 ? `${line.slice(0, 200)}…` : line;
}

/**
 * What to tell about a run that went through: text on the error stream, output that came after its cell had ended (`isLate`,
 * and `afterwards` for what came after the last one), and messages that could not be understood.
 */
export function runWarnings(
  runs: readonly CellRun[],
  isLate: (requestId: string) => boolean,
  afterwards: string,
  notUnderstood: number,
): RunWarning[] {
  const awaited = "put await before every call that returns a promise, or the output may be lost";
  const warnings: RunWarning[] = runs.flatMap(({ number: cell, outputs, requestId }) => {
    const said = streamText(outputs, "stderr");
    return [
      ...(said.trim() === "" ? [] : [{ cell, message: `Code cell ${cell} wrote to the error stream: ${excerpt(said)}` }]),
      ...(isLate(requestId) ? [{ cell, message: `Code cell ${cell} printed after it had ended: ${awaited}.` }] : []),
    ];
  });
  if (afterwards.trim() !== "") {
    const message = `Something was printed after the last cell had ended and is not in the notebook (${awaited}): ${excerpt(afterwards)}`;
    warnings.push({ cell: null, message });
  }
  if (notUnderstood > 0) {
    warnings.push({
      cell: null,
      message: `${notUnderstood} messages of the kernel could not be understood and were passed over.`,
    });
  }
  return warnings;
}
