import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import type { Terminal } from "../../src/run/Terminal.js";

/** A folder of its own for one test, with the files given; gone when the test ends. */
export function folderWith(files: Readonly<Record<string, string>> = {}): string {
  const folder = mkdtempSync(join(tmpdir(), "underfoot-"));
  onTestFinished(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
}

/** A terminal that keeps what is printed on it. */
export function heard(): Terminal & { readonly text: () => string; readonly errors: () => string } {
  const [out, err]: string[][] = [[], []];
  return {
    stdout: { write: (text) => out!.push(text), columns: 80 },
    stderr: { write: (text) => err!.push(text) },
    text: () => out!.join(""),
    errors: () => err!.join(""),
  };
}

export const studyJson = JSON.stringify({ name: "Two yards", gaugeDay: "ends_on_date" });
