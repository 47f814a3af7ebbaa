import { escapeHtml } from "./escapeHtml.js";
import { answerHtml } from "./html/answerHtml.js";
import { pageFrame } from "./html/pageFrame.js";
import { scrollHtml } from "./html/scrollHtml.js";
import { tableHtml } from "./html/tableHtml.js";
import type { Page } from "./Page.js";
import { reportTables } from "./reportTables.js";
import { settingsTable } from "../answer/settingsTable.js";

/**
 * A page that needs nothing else: no script, no network, drawings inside, the numbers behind every chart. Made to be read on a phone,
 * printed on A4 and read aloud. The same input gives the same text.
 */
export async function toHtmlPage(page: Page): Promise<string> {
  const sections: string[] = [];
  for (const [index, answer] of page.answers.entries()) sections.push(await answerHtml(answer, idOf(index)));
  const { made } = page;
  const compact = page.compact === true;
  const body = [
    `<header><h1>${escapeHtml(page.title)}</h1>`,
    ...page.intro.map((paragraph) => `<p>${escapeHtml(paragraph)}</p>`),
    ...(compact ? [] : [`<p class="about">Study: ${escapeHtml(made.study)}. Made on ${escapeHtml(made.on)}.</p>`]),
    `</header>`,
    ...(page.cautions.length === 0 ? [] : [first(page.cautions)]),
    ...(compact || page.answers.length < 2 ? [] : [contents(page)]),
    `<main>`,
    ...sections,
    ...(page.report === null ? [] : [tablesSection("what-was-read", "What was read", reportTables(page.report))]),
    ...(compact ? [] : [tablesSection("settings", "What the answers rest on", [settingsTable(made.settings, page.settings)])]),
    `</main>`,
    `<footer>${compact ? settingsLine(page) : ""}<p>Made with ${escapeHtml(made.program)} on ${escapeHtml(made.on)} from the study ${escapeHtml(made.study)}.</p></footer>`,
  ];
  return pageFrame(page.title, body, compact);
}

function idOf(index: number): string {
  return `answer-${index + 1}`;
}

function first(cautions: readonly string[]): string {
  const items = cautions.map((caution) => `<li>${escapeHtml(caution)}</li>`).join("\n");
  return `<aside class="first" aria-labelledby="first"><h2 id="first">Read this first</h2><ul>${items}</ul></aside>`;
}

function contents(page: Page): string {
  const links = page.answers.map(({ question }, index) => `<li><a href="#${idOf(index)}">${escapeHtml(question)}</a></li>`);
  if (page.report !== null) links.push(`<li><a href="#what-was-read">What was read</a></li>`);
  return `<nav aria-labelledby="contents"><h2 id="contents">Questions on this page</h2><ol>${links.join("\n")}</ol></nav>`;
}

function settingsLine({ made, settings }: Page): string {
  const said = settingsTable(made.settings, settings).rows.map(({ setting, value }) => `${setting ?? ""}: ${value ?? ""}`);
  return `<p>${escapeHtml(said.join(". "))}.</p>`;
}

function tablesSection(id: string, title: string, tables: readonly Parameters<typeof tableHtml>[0][]): string {
  const inner = tables.map((table) => scrollHtml(tableHtml(table, 500), table.caption)).join("\n");
  return `<section id="${id}" aria-labelledby="${id}-title"><h2 id="${id}-title">${escapeHtml(title)}</h2>\n${inner}</section>`;
}
