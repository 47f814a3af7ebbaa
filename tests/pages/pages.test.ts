import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { AxeResults } from "axe-core";
import { chromium, type Browser, type Page as Tab } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { toHtmlPage } from "../../src/show/toHtmlPage.js";
import { browserTests, chromiumPath } from "../chromiumPath.js";
import { pagesOfStudies } from "./pagesOfStudies.js";

vi.setConfig({ testTimeout: 120_000, hookTimeout: 180_000 });

const executablePath = chromiumPath();
const axe = createRequire(import.meta.url).resolve("axe-core/axe.min.js");
const pages = executablePath === undefined ? [] : await pagesOfStudies();

// Set CHROME_PATH where the browser lies elsewhere.
describe.skipIf(executablePath === undefined)(browserTests("pages in a browser"), () => {
  const folder = mkdtempSync(join(tmpdir(), "pages-"));
  const fileOf = (name: string) => join(folder, `${name.replaceAll(" ", "-")}.html`);
  let browser: Browser;

  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: executablePath!, args: ["--no-sandbox", "--disable-gpu"] });
  });

  afterAll(async () => {
    await browser.close();
    rmSync(folder, { recursive: true });
  });

  /** Opens a page, and fails when it asks for anything but itself or complains. */
  async function opened(
    name: string,
    options: { width: number; colorScheme: "light" | "dark"; bypassCSP?: boolean },
    use: (tab: Tab) => Promise<void>,
  ) {
    const { width, ...rest } = options;
    const context = await browser.newContext({ ...rest, viewport: { width, height: 900 } });
    const tab = await context.newPage();
    const address = pathToFileURL(fileOf(name)).href;
    const trouble: string[] = [];
    tab.on("console", (message) => trouble.push(message.text()));
    tab.on("request", (request) => {
      if (request.url() !== address) trouble.push(request.url());
    });
    await tab.goto(address);
    await use(tab);
    await context.close();
    expect(trouble).toEqual([]);
  }

  async function unfold(tab: Tab) {
    for (const summary of await tab.locator("summary").all()) await summary.click();
  }

  // axe-core 4: the rules it can decide for WCAG 2.2 at level AA. Its script gets in only past the page's own policy.
  async function axeFindsNothing(tab: Tab) {
    await tab.addScriptTag({ path: axe });
    const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
    const options = { runOnly: tags, rules: { "target-size": { enabled: true } } };
    const found = await tab.evaluate<AxeResults>(`axe.run(${JSON.stringify(options)})`);
    expect(found.violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ""}`)).toEqual([]);
    const passed = found.passes.map(({ id }) => id);
    expect(passed).toEqual(expect.arrayContaining(["color-contrast", "heading-order", "target-size"]));
  }

  describe.each(pages)("%s", (name, page, kind) => {
    beforeAll(async () => {
      writeFileSync(fileOf(name), await toHtmlPage(page()));
    });

    test("on a phone in the dark: never scrolled sideways, drawings in words and numbers, nothing for axe to find", async () => {
      await opened(name, { width: 390, colorScheme: "dark", bypassCSP: true }, async (tab) => {
        await unfold(tab);
        expect(await tab.evaluate("document.documentElement.scrollWidth")).toBe(390);
        const bare = await tab.evaluate<string[]>(`[...document.querySelectorAll("figure")].filter((figure) => {
          const words = figure.querySelector("svg[role=img] > desc")?.textContent ?? "";
          return words.length < 20 || figure.parentElement.querySelectorAll("table").length === 0;
        }).map((figure) => figure.textContent)`);
        expect(bare).toEqual([]);
        if (kind !== "large") await axeFindsNothing(tab);
      });
    });

    test("on a desk: the keyboard goes from top to bottom and shows where it is; nothing for axe to find", async () => {
      await opened(name, { width: 1280, colorScheme: "light", bypassCSP: true }, async (tab) => {
        const stops = await tab.evaluate<number>(`(() => {
          window.stops = [...document.querySelectorAll("a[href], summary, [tabindex]")].filter((each) => each.checkVisibility());
          return window.stops.length;
        })()`);
        const visited: { at: number; top: number; outline: string }[] = [];
        while (visited.length < Math.min(stops, 40)) {
          await tab.keyboard.press("Tab");
          const stop = await tab.evaluate<(typeof visited)[number]>(`(() => {
            const now = document.activeElement;
            const { outlineStyle, outlineWidth } = getComputedStyle(now);
            const top = now.getBoundingClientRect().top + scrollY;
            return { at: window.stops.indexOf(now), top, outline: outlineStyle + " " + outlineWidth };
          })()`);
          visited.push(stop);
        }
        expect(visited.map(({ at, outline }) => [at, outline])).toEqual(visited.map((_, at) => [at, "solid 3px"]));
        const tops = visited.map(({ top }) => top);
        expect([...tops].sort((a, b) => a - b)).toEqual(tops);
        await unfold(tab);
        await axeFindsNothing(tab);
      });
    });

    test(`printed on A4${kind === "one sheet" ? ", on one sheet" : ""}; nothing runs off the paper`, async () => {
      await opened(name, { width: 1280, colorScheme: "dark" }, async (tab) => {
        const pdf = (await tab.pdf({ preferCSSPageSize: true })).toString("latin1");
        const sheets = pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
        expect(sheets).toBeGreaterThan(0);
        if (kind === "one sheet") expect(sheets).toBe(1);
        // ISO 216: A4 is 210 by 297 mm, 595.3 by 841.9 points; the browser rounds to whole pixels.
        for (const [, width, height] of pdf.matchAll(/\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/g)) {
          expect(Math.abs(Number(width) - 595.3)).toBeLessThan(1);
          expect(Math.abs(Number(height) - 841.9)).toBeLessThan(1);
        }
        // The paper less its margins, in px at 96 an inch: 186 mm for a sheet set closely, 180 mm else.
        await tab.emulateMedia({ media: "print" });
        const mm = (await tab.locator("body.compact").count()) === 1 ? 186 : 180;
        await tab.setViewportSize({ width: Math.floor((mm / 25.4) * 96), height: 1000 });
        expect(await tab.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")).toBe(0);
      });
    });

    test("feet that are the vet's stand before any other answer", () => {
      const html = readFileSync(fileOf(name), "utf8");
      const headings = [...html.matchAll(/<h2 id="answer-\d+-question">([^<]*)</g)].map(([, text]) => text);
      if (!html.includes("No foot has been recorded yet.")) expect(headings[0]).toMatch(/the vet&#39;s/);
    });
  });
});
