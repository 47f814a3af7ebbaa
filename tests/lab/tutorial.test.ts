import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { fences } from "../docs/fences.js";
import { root } from "../repository/trackedFiles.js";
import { openBrowser } from "./browser.js";
import { codeCells, newNotebook, runCell } from "./labPage.js";
import { drawings } from "./lookedAt.js";
import { pictures } from "./pictures.js";
import { startLab } from "./startLab.js";
import { workplace } from "./workplace.js";

test("the tutorial, as its reader does it: a folder, five rows, a new notebook in JupyterLab, a first chart", async () => {
  const place = await workplace("lab-tutorial");
  const steps = fences(readFileSync(join(root, "docs", "tutorial.md"), "utf8"));
  execFileSync(process.execPath, [join(root, "dist", "cli.js"), "new", "my-yards"], { cwd: place.pictures });
  for (const { file, text } of steps) if (file !== null) writeFileSync(join(place.pictures, file), text);
  const lab = await startLab(place);
  const browser = await openBrowser();
  try {
    const page = await browser.newPage({ viewport: { width: 1300, height: 2000 } });
    await newNotebook(page, lab.address(), "TypeScript");
    const cells = steps.filter(({ language }) => language === "ts").map(({ text }) => text.trimEnd());
    expect(cells.length).toBeGreaterThan(2);
    for (const [index, source] of cells.entries()) await runCell(page, index, source);

    const run = (await codeCells(page)).slice(0, cells.length);
    expect(run.map(({ source }) => source)).toEqual(cells);
    expect(run.map(({ count }) => count)).toEqual(cells.map((_, index) => index + 1));
    const outputs = run.map((cell) => cell.outputs);
    expect(outputs.flat().filter(({ output_type }) => output_type !== "display_data")).toEqual([]);
    expect(outputs.map((each) => each.length > 0)).toEqual(cells.map(() => true));
    // One row a foot, one mark a visit; the chart is live, and what cannot be answered says so.
    expect(await drawings(page)).toHaveLength(1);
    const below = page.locator(".jp-OutputArea").nth(cells.length - 1);
    expect(await below.innerText()).toContain("Not enough data");
    await pictures(page, join(place.pictures, "tutorial"));
  } finally {
    await browser.close();
    await lab.stop();
  }
});
