import { grouped } from "../../study/grouped.js";
import type { OutlineFault } from "../../study/OutlineFault.js";
import type { OutlinePoint } from "../../study/OutlinePoint.js";
import type { IssueLog } from "../report/issueLog.js";
import { outlineFaults } from "./outlineFaults.js";
import { tracingParts } from "./tracingParts.js";

/** Warns of what is wrong with a tracing as a whole, at the line of its first point. Its rows are kept. */
export function warnOfOutlines(outlines: readonly OutlinePoint[], log: IssueLog): void {
  const tracings = grouped(outlines, ({ horseId, visitDate, foot, stage, tracing }) =>
    [horseId, visitDate, foot, stage, tracing].join("\n"),
  );
  for (const points of tracings.values()) {
    const [row] = points;
    if (row === undefined) continue;
    const { file, line, horseId, visitDate, foot } = row;
    for (const { code, severity, message, hint } of outlineFaults(tracingParts(points))) {
      const left = severity === "unusable" ? " Until then no figure uses it." : "";
      log.add(
        {
          code: outlineCode(code),
          severity: "warning",
          found: `the outline of ${horseId}, ${foot}, of ${visitDate}: ${sentenceWithin(message)}`,
          hint: `${hint}${left}`,
        },
        { file, line, row: null, column: null, value: null },
      );
    }
  }
}

function outlineCode(code: OutlineFault["code"]): string {
  return `outline_${code}`;
}

function sentenceWithin(message: string): string {
  return message.slice(0, 1).toLowerCase() + message.slice(1).replace(/\.$/, "");
}
