import type { Answer, NotEnoughData } from "../answer/Answer.js";
import type { Chart } from "../chart/Chart.js";
import type { Table } from "../chart/Table.js";
import type { DataReport } from "../study/DataReport.js";
import type { Study } from "../study/Study.js";
import type { ItemsInARow } from "./ItemsInARow.js";
import { methodText } from "./methodText.js";
import { reportTables } from "./reportTables.js";

/** What can be shown: a whole answer, one of its charts or tables, a study or its data report, several of these in a row, or words in Markdown. @private */
export type Showable = Answer | NotEnoughData | Chart | Table | Study | DataReport | ItemsInARow | string;

/** A piece of what is shown, in reading order. */
export type Part =
  | { readonly kind: "title" | "sentence" | "method" | "markdown"; readonly text: string }
  | { readonly kind: "cautions"; readonly items: readonly string[] }
  | { readonly kind: "chart"; readonly chart: Chart }
  | { readonly kind: "table"; readonly table: Table };

/** Takes apart what is to be shown: question, answer in a sentence, charts, tables, cautions, method. */
export function partsOf(item: Showable): Part[] {
  if (typeof item === "string") return [{ kind: "markdown", text: item }];
  if ("kind" in item && item.kind === "side_by_side") return item.items.flatMap(partsOf);
  if ("kind" in item) return item.kind === "answer" ? answerParts(item) : lackParts(item);
  if ("spec" in item) return [{ kind: "chart", chart: item }];
  if ("caption" in item) return [{ kind: "table", table: item }];
  if ("flow" in item) return tableParts(reportTables(item));
  return [{ kind: "title", text: `${item.name}: what was read` }, ...tableParts(reportTables(item.report))];
}

function answerParts(answer: Answer): Part[] {
  return [
    { kind: "title", text: answer.question },
    { kind: "sentence", text: answer.sentence },
    ...answer.charts.map((chart): Part => ({ kind: "chart", chart })),
    ...tableParts(answer.tables),
    ...(answer.cautions.length === 0 ? [] : [{ kind: "cautions", items: answer.cautions } as const]),
    { kind: "method", text: methodText(answer.method) },
  ];
}

function lackParts(lack: NotEnoughData): Part[] {
  return [
    { kind: "title", text: lack.question },
    { kind: "sentence", text: `Not enough data. ${lack.reason}` },
  ];
}

function tableParts(tables: readonly Table[]): Part[] {
  return tables.map((table) => ({ kind: "table", table }));
}
