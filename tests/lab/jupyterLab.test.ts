import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { notebooks } from "../notebooks/notebooks.js";
import { openBrowser } from "./browser.js";
import { codeCells, isMarkedChanged, openNotebook, restartAndRunAll, save, setTheme } from "./labPage.js";
import { litBands } from "./litBands.js";
import { contrasts, drawings } from "./lookedAt.js";
import { pictures } from "./pictures.js";
import { startLab, type Lab } from "./startLab.js";
import { workplace, type Workplace } from "./workplace.js";

const vegaLite = "application/vnd.vegalite.v5+json";

// WCAG 2.2, success criterion 1.4.3 (level AA): text of normal size needs at least 4.5 to 1.
const leastContrast = 4.5;

// JupyterLab asks a restarted kernel who it is, and drops its own question when the server says once more that the kernel restarts. Which comes first
// is chance; the question is asked again.
const ownRace = "Canceled future for kernel_info_request message before replies were done";

let [place, lab, browser]: [Workplace?, Lab?, Browser?] = [];

beforeAll(async () => {
  place = await workplace("lab-test");
  lab = await startLab(place);
  browser = await openBrowser();
});

afterAll(async () => {
  await browser?.close();
  await lab?.stop();
});

async function looksRight(page: Page, charts: number, picture: string): Promise<void> {
  const drawn = await drawings(page);
  expect(drawn).toHaveLength(charts);
  for (const { colours, width, height } of drawn) {
    // A blank canvas has one colour; a drawing has inks, bars and the shades between them.
    expect(colours).toBeGreaterThan(10);
    expect(Math.min(width, height)).toBeGreaterThan(80);
  }
  const texts = await contrasts(page);
  expect(texts.length).toBeGreaterThan(20);
  expect(texts.filter(({ ratio }) => ratio < leastContrast)).toEqual([]);
  await pictures(page, join(place!.pictures, picture));
}

/** Points at a month in the upper panel of each chart of thrush and rain; how many such charts there are. */
async function pointedMonthsAreLit(page: Page): Promise<number> {
  const charts = await page.locator('.jp-OutputArea-output [role="graphics-document"][aria-label*=" Most rain: "]').all();
  for (const chart of charts) {
    await chart.scrollIntoViewIfNeeded();
    expect(await litBands(chart), "lit without a pointer").toEqual([]);
    // The notebook may still be moving to where it was scrolled.
    const point = async () => {
      await page.mouse.move(0, 0);
      const { width, height } = (await chart.locator("canvas").boundingBox())!;
      await chart.locator("canvas").hover({ position: { x: width * 0.6, y: height * 0.45 } });
      await pause(100);
      expect(await litBands(chart), "panels lit").toHaveLength(2);
    };
    await vi.waitFor(point, { timeout: 20_000, interval: 300 });
    const said = (await page.locator("#vg-tooltip-element.visible").innerText()).replace(/\s+/g, " ");
    expect(said).toMatch(/^Month: .*With thrush: .*(horses|no share).*Rain: (\d+ mm|no total)$/);
    await page.mouse.move(0, 0);
  }
  return charts.length;
}

let monthsPointedAt = 0;

describe.each(notebooks)("%s in JupyterLab", (name) => {
  test("opens unchanged, runs from a fresh kernel, draws every chart live, and reads in light and dark", async () => {
    const page = await browser!.newPage({ viewport: { width: 1300, height: 5000 } });
    const faults: string[] = [];
    page.on("pageerror", ({ message }) => {
      if (message !== ownRace) faults.push(message);
    });
    await openNotebook(page, lab!.address(name));
    // A front end that rewrites a file does so in the first moments.
    await pause(2000);
    expect(await isMarkedChanged(page)).toBe(false);

    await restartAndRunAll(page);
    // The mark is there when it should be, so its absence above means something.
    expect(await isMarkedChanged(page)).toBe(true);
    const cells = await codeCells(page);
    expect(cells.map(({ count }) => count)).toEqual(cells.map((_, index) => index + 1));
    const outputs = cells.flatMap((cell) => cell.outputs);
    expect(outputs.filter((output) => output.output_type === "error")).toEqual([]);
    expect(outputs.filter((output) => output.output_type === "stream" && output.name === "stderr")).toEqual([]);
    const specs = outputs.flatMap((output) => (output.output_type === "display_data" ? (output.data[vegaLite] ?? []) : []));
    const charts = specs.length;
    expect(charts).toBeGreaterThan(0);
    const fonts = specs.map((spec) => (spec as { config: { font: string } }).config.font);
    // A list of families that is no CSS is passed over by a canvas, and with it size and weight.
    expect(await page.evaluate((lists) => lists.filter((list) => !CSS.supports("font-family", list)), fonts)).toEqual([]);
    await looksRight(page, charts, name.replace(/\.ipynb$/, "-light"));
    const ofMonths = cells.filter(({ source }) => source.includes("show(thrushByMonth(")).length;
    expect(await pointedMonthsAreLit(page)).toBe(ofMonths);
    monthsPointedAt += ofMonths;

    await save(page);
    await openNotebook(page, lab!.address(name));
    await pause(2000);
    expect(await isMarkedChanged(page), "marked as changed when opened with its outputs").toBe(false);
    await setTheme(page, "JupyterLab Dark");
    await looksRight(page, charts, name.replace(/\.ipynb$/, "-dark"));
    await setTheme(page, "JupyterLab Light");
    expect(faults).toEqual([]);
    await page.close();
  });
});

test("some notebook has a chart of months to point at", () => {
  expect(monthsPointedAt).toBeGreaterThan(0);
});
