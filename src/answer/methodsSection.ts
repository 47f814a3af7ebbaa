import { version } from "../study/version.js";
import type { Answer, NotEnoughData } from "./Answer.js";

/**
 * The methods section as text, a paragraph for each part, made of what was run: what was declared, then for each part its unit, n, missing and method, then what was not done and why, and the
 * versions. Give the replies in the order in which they were shown. What was not run is not in it; why it was done, on whom and under what ethics is the author's to write.
 */
export function methodsSection(replies: readonly (Answer | NotEnoughData)[]): string {
  const answers = replies.filter(({ id }) => id !== "study-paper").filter((reply) => reply.kind === "answer");
  const declared = answers.filter(({ id }) => id === "study-declaration");
  const rest = answers.filter(({ id }) => id !== "study-declaration");
  const skipped = replies.filter((reply) => reply.kind === "not_enough_data");
  const lines = declared.flatMap(({ tables }) => tables.flatMap(({ rows }) => rows));
  return [
    ...(lines.length === 0
      ? []
      : [`Declared first. ${lines.map((row) => `${textOf(row["what"])}: ${textOf(row["declared"])}.`).join(" ")}`]),
    ...rest.map(({ question, method }) => `${question} ${methodOf(method)}`),
    ...skipped.map(({ question, reason }) => `${question} Not done: ${reason}`),
    `Computed with underfoot ${version} under Node.js ${process.versions.node}.`,
  ].join("\n\n");
}

function textOf(cell: unknown): string {
  return typeof cell === "string" ? cell.replace(/\.$/, "") : "";
}

function methodOf({ unit, n, missing, text }: Answer["method"]): string {
  return `Unit: ${unit}; n ${n}, missing ${missing}. ${text}`;
}
