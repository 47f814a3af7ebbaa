import { existsSync } from "node:fs";
import { chromium, type Browser } from "playwright-core";

/** The Chromium of the system; CHROME_PATH names another one. */
export async function openBrowser(): Promise<Browser> {
  const places = [process.env["CHROME_PATH"], "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];
  const executablePath = places.find((path) => path !== undefined && existsSync(path));
  if (executablePath === undefined) throw new Error("No Chromium found. Install it, or name it in CHROME_PATH.");
  return chromium.launch({ executablePath, args: ["--no-sandbox", "--disable-gpu"] });
}
