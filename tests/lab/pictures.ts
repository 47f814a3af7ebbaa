import type { Page } from "playwright-core";

const partPx = 2400;

/** Pictures of the whole open notebook, for a person to look at: `path-1.png`, `path-2.png` from top to bottom, each of a few screens. */
export async function pictures(page: Page, path: string): Promise<void> {
  const before = page.viewportSize()!;
  const notebook = page.locator(".jp-NotebookPanel-notebook .jp-WindowedPanel-outer");
  // Everything is in view at once, so that nothing is scrolled between two pictures.
  const height = await notebook.evaluate((element) => element.scrollHeight);
  await page.setViewportSize({ width: before.width, height: height + 200 });
  await notebook.evaluate((element) => {
    element.scrollTop = 0;
  });
  const box = (await notebook.boundingBox())!;
  for (let part = 0; part * partPx < height; part += 1) {
    const clip = { ...box, y: box.y + part * partPx, height: Math.min(partPx, height - part * partPx) };
    await page.screenshot({ path: `${path}-${part + 1}.png`, clip });
  }
  await page.setViewportSize(before);
}
