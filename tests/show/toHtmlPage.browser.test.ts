import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { AxeResults } from "axe-core";
import { chromium, type Browser, type Page as Tab } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { toHtmlPage } from "../../src/show/toHtmlPage.js";
import { defaultSettings } from "../../src/study/defaultSettings.js";
import { browserTests, chromiumPath } from "../chromiumPath.js";
import { charts } from "../chart/charts.js";
import { answer, longTable, notEnough, report } from "./shown.js";

const executablePath = chromiumPath();
const axe = createRequire(import.meta.url).resolve("axe-core/axe.min.js");

// Set CHROME_PATH where the browser lies elsewhere.
describe.skipIf(executablePath === undefined)(browserTests("in a browser"), () => {
  const folder = mkdtempSync(join(tmpdir(), "page-"));
  const file = join(folder, "page.html");
  let browser: Browser;

  beforeAll(async () => {
    const drawn = charts.filter(([name]) => !/ten years|one /.test(name)).map(([, chart]) => chart);
    const every = { ...answer, id: "every", question: "What does each chart look like?", charts: drawn, tables: [longTable(12)] };
    const html = await toHtmlPage({
      title: "The season at three yards",
      intro: ["Invented records."],
      cautions: ["This page is not a diagnosis."],
      answers: [answer, every, notEnough],
      report,
      made: { on: "2025-12-01", study: "Three yards", program: "underfoot 0.1.0", settings: defaultSettings },
    });
    writeFileSync(file, html);
    browser = await chromium.launch({ executablePath: executablePath!, args: ["--no-sandbox", "--disable-gpu"] });
  }, 60_000);

  afterAll(async () => {
    await browser.close();
    rmSync(folder, { recursive: true });
  });

  async function opened(
    options: { width: number; colorScheme: "light" | "dark"; bypassCSP?: boolean },
    use: (tab: Tab) => Promise<void>,
  ) {
    const { width, ...rest } = options;
    const context = await browser.newContext({ ...rest, viewport: { width, height: 900 } });
    const tab = await context.newPage();
    const trouble: string[] = [];
    tab.on("console", (message) => trouble.push(message.text()));
    tab.on("request", (request) => {
      if (request.url() !== pathToFileURL(file).href) trouble.push(request.url());
    });
    await tab.goto(pathToFileURL(file).href);
    await use(tab);
    await context.close();
    expect(trouble).toEqual([]);
  }

  // axe-core 4: the rules it can decide for WCAG 2.2 at level AA. Its script gets in only past the page's own policy.
  test.each([
    [390, "dark"],
    [1280, "light"],
  ] as const)(
    "axe finds nothing at %d px, %s, everything unfolded",
    async (width, colorScheme) => {
      await opened({ width, colorScheme, bypassCSP: true }, async (tab) => {
        for (const summary of await tab.locator("summary").all()) await summary.click();
        await tab.addScriptTag({ path: axe });
        const rules = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
        const found = await tab.evaluate<AxeResults>(`axe.run({ runOnly: ${JSON.stringify(rules)} })`);
        expect(found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ""}`)).toEqual([]);
        expect(found.passes.map(({ id }) => id)).toEqual(
          expect.arrayContaining(["color-contrast", "svg-img-alt", "heading-order"]),
        );
      });
    },
    60_000,
  );

  test("a phone is never scrolled sideways, only what is wide inside its box", async () => {
    await opened({ width: 390, colorScheme: "light" }, async (tab) => {
      for (const summary of await tab.locator("summary").all()) await summary.click();
      expect(await tab.evaluate("document.documentElement.scrollWidth")).toBe(390);
    });
  });

  test("no word of a drawing leaves it, whatever typeface this machine has", async () => {
    await opened({ width: 1280, colorScheme: "light" }, async (tab) => {
      const outside = await tab.evaluate<string[]>(`[...document.querySelectorAll("svg")].flatMap((svg) => {
        const box = svg.getBoundingClientRect();
        return [...svg.querySelectorAll("text")].filter((text) => {
          const { left, right } = text.getBoundingClientRect();
          return left < box.left - 1 || right > box.right + 1;
        }).map((text) => text.textContent);
      })`);
      expect(outside).toEqual([]);
    });
  });

  test("printed, what was folded is open and the contents are gone", async () => {
    await opened({ width: 800, colorScheme: "dark" }, async (tab) => {
      const shown = () =>
        tab.evaluate<boolean[]>(
          `[...document.querySelectorAll("details > *:not(summary)")].map((inner) => inner.checkVisibility())`,
        );
      expect(new Set(await shown())).toEqual(new Set([false]));
      await tab.emulateMedia({ media: "print" });
      expect(new Set(await shown())).toEqual(new Set([true]));
      expect(await tab.locator("nav").isVisible()).toBe(false);
      expect(await tab.evaluate("getComputedStyle(document.body).backgroundColor")).toBe("rgb(255, 255, 255)");
    });
  });
});
