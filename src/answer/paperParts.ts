import type { Chart } from "../chart/Chart.js";
import type { Table } from "../chart/Table.js";
import type { Answer, NotEnoughData } from "./Answer.js";

/** The tables and charts of the replies under names for files: `rain-effect-table-1`, `rain-effect-figure-1`. */
export function paperParts(replies: readonly (Answer | NotEnoughData)[]): {
  readonly tables: readonly { readonly name: string; readonly table: Table }[];
  readonly figures: readonly { readonly name: string; readonly chart: Chart }[];
} {
  const answers = replies.filter((reply) => reply.kind === "answer");
  return {
    tables: answers.flatMap((answer) =>
      answer.tables.map((table, place) => ({ name: `${answer.id}-table-${place + 1}`, table })),
    ),
    figures: answers.flatMap((answer) =>
      answer.charts.map((chart, place) => ({ name: `${answer.id}-figure-${place + 1}`, chart })),
    ),
  };
}
