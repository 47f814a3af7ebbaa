import type { Page } from "playwright-core";
import type { NotebookOutput } from "../../src/run/Notebook.js";

/** A code cell as JupyterLab holds it. */
export interface LabCell {
  readonly source: string;
  readonly count: number | null;
  readonly outputs: readonly NotebookOutput[];
}

const idle = '.jp-NotebookPanel-toolbar .jp-Notebook-ExecutionIndicator[data-status="idle"]';
const dirty = ".lm-DockPanel-tabBar .lm-TabBar-tab.lm-mod-current.jp-mod-dirty";

/** Opens a notebook and waits until its kernel is idle. */
export async function openNotebook(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.locator(".jp-Notebook .jp-Cell").first().waitFor({ timeout: 90_000 });
  await page.locator(idle).waitFor({ timeout: 60_000 });
}

/** File → New → Notebook, the kernel chosen by its name, as a person does it; waits until the kernel is idle. */
export async function newNotebook(page: Page, address: string, kernel: string): Promise<void> {
  await page.goto(address);
  await page.locator(".lm-MenuBar-itemLabel", { hasText: /^File$/ }).click({ timeout: 90_000 });
  await page.locator(".lm-Menu-itemLabel", { hasText: /^New$/ }).click();
  await page.locator(".lm-Menu-itemLabel", { hasText: /^Notebook$/ }).click();
  await page.locator(".jp-Dialog select").selectOption({ label: kernel });
  await page.locator(".jp-Dialog button.jp-mod-accept").click();
  await page.locator(idle).waitFor({ timeout: 60_000 });
}

/** Writes a cell, counted from 0, and runs it with Shift and Enter; waits until it has run. */
export async function runCell(page: Page, index: number, source: string): Promise<void> {
  const cell = page.locator(".jp-CodeCell").nth(index);
  await cell.locator(".cm-content").click();
  await page.keyboard.insertText(source);
  await page.keyboard.press("Shift+Enter");
  await cell.locator(".jp-InputPrompt", { hasText: /\[\d+\]/ }).waitFor({ timeout: 60_000 });
}

/** Whether the tab says that the file was changed. */
export async function isMarkedChanged(page: Page): Promise<boolean> {
  return (await page.locator(dirty).count()) > 0;
}

/** Run → Restart Kernel and Run All Cells, as a person clicks it; waits until the last cell has run. */
export async function restartAndRunAll(page: Page): Promise<void> {
  await page.locator(".lm-MenuBar-itemLabel", { hasText: /^Run$/ }).click();
  await page.locator(".lm-Menu-itemLabel", { hasText: /^Restart Kernel and Run All Cells/ }).click();
  await page.locator(".jp-Dialog button.jp-mod-accept").click();
  const last = page.locator(".jp-CodeCell").last().locator(".jp-InputPrompt");
  await page.waitForFunction(
    () => {
      const prompts = [...document.querySelectorAll(".jp-CodeCell .jp-InputPrompt")].map((prompt) => prompt.textContent);
      return prompts.length > 0 && prompts.every((prompt) => /\[\d+\]/.test(prompt));
    },
    undefined,
    { timeout: 120_000 },
  );
  await last.scrollIntoViewIfNeeded();
}

/** The code cells as JupyterLab holds them. */
export function codeCells(page: Page): Promise<LabCell[]> {
  return page.evaluate(() => {
    interface Shared {
      readonly cells: readonly {
        cell_type: string;
        source: string | string[];
        execution_count: number | null;
        outputs: never[];
      }[];
    }
    const { jupyterapp } = window as unknown as {
      jupyterapp: { shell: { currentWidget: { content: { model: { sharedModel: { toJSON: () => Shared } } } } } };
    };
    return jupyterapp.shell.currentWidget.content.model.sharedModel
      .toJSON()
      .cells.filter((cell) => cell.cell_type === "code")
      .map(({ source, execution_count: count, outputs }) => ({ source: [source].flat().join(""), count, outputs }));
  });
}

/** Saves with the keyboard and waits until the mark is gone. */
export async function save(page: Page): Promise<void> {
  await page.keyboard.press("Control+s");
  await page.waitForFunction((mark) => document.querySelector(mark) === null, dirty, { timeout: 30_000 });
}

/** Settings → Theme, by the command that the menu calls. */
export async function setTheme(page: Page, theme: "JupyterLab Light" | "JupyterLab Dark"): Promise<void> {
  await page.evaluate(async (name) => {
    const { jupyterapp } = window as unknown as {
      jupyterapp: { commands: { execute: (id: string, args: object) => Promise<void> } };
    };
    await jupyterapp.commands.execute("apputils:change-theme", { theme: name });
  }, theme);
  await page.waitForFunction((name) => document.body.dataset["jpThemeName"] === name, theme, { timeout: 30_000 });
}
