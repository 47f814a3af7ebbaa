import { chromium, type Browser } from "playwright-core";
import { chromiumPath } from "../chromiumPath.js";

/** The Chromium of the system; CHROME_PATH names another one. */
export async function openBrowser(): Promise<Browser> {
  const executablePath = chromiumPath();
  if (executablePath === undefined) throw new Error("No Chromium found. Install it, or name it in CHROME_PATH.");
  return chromium.launch({ executablePath, args: ["--no-sandbox", "--disable-gpu"] });
}
