import type { Answer, NotEnoughData } from "../../answer/Answer.js";
import { escapeHtml } from "../escapeHtml.js";
import { methodText } from "../methodText.js";
import { chartHtml } from "./chartHtml.js";
import { scrollHtml } from "./scrollHtml.js";
import { tableHtml } from "./tableHtml.js";

const mostRows = 500;

/** One answer as a section of a page; `id` names it in the page's contents. */
export async function answerHtml(answer: Answer | NotEnoughData, id: string): Promise<string> {
  const heading = `<section id="${id}" aria-labelledby="${id}-question"><h2 id="${id}-question">${escapeHtml(answer.question)}</h2>`;
  if (answer.kind === "not_enough_data")
    return `${heading}<p class="sentence lacking"><strong>Not enough data.</strong> ${escapeHtml(answer.reason)}</p></section>`;
  const charts: string[] = [];
  for (const [index, chart] of answer.charts.entries())
    charts.push(await chartHtml(chart, `${id}-chart-${index + 1}`, !answer.tables.includes(chart.table)));
  return [
    heading,
    `<p class="sentence">${escapeHtml(answer.sentence)}</p>`,
    ...charts,
    ...answer.tables.map((table) => scrollHtml(tableHtml(table, mostRows), table.caption)),
    ...(answer.cautions.length === 0 ? [] : [cautions(answer.cautions)]),
    `<details><summary>How this was worked out</summary><p>${escapeHtml(methodText(answer.method))}</p></details></section>`,
  ].join("\n");
}

function cautions(items: readonly string[]): string {
  return `<div class="cautions"><h3>Cautions</h3><ul>${items.map((item) => `<li>${escapeHtml(item)}</li>`).join("")}</ul></div>`;
}
