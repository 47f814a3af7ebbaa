import { existsSync } from "node:fs";
import { chromium } from "playwright-core";

/**
 * Where a Chromium lies, or undefined when there is none: `CHROME_PATH`, the usual places, or one that playwright-core installed.
 * @throws Error where `CHROME_REQUIRED` is set and there is none, so that nothing is passed over unseen.
 */
export function chromiumPath(): string | undefined {
  const places = [
    process.env["CHROME_PATH"],
    "/usr/bin/chromium",
    "/usr/bin/chromium-browser",
    "/usr/bin/google-chrome",
    chromium.executablePath(),
  ];
  const found = places.find((path) => path !== undefined && path !== "" && existsSync(path));
  if (found === undefined && process.env["CHROME_REQUIRED"] !== undefined)
    throw new Error(
      "CHROME_REQUIRED is set and no Chromium was found: npx playwright-core install chromium, or set CHROME_PATH.",
    );
  return found;
}

/** What a group of tests is called that needs a browser: says why it is passed over where there is none. */
export function browserTests(what: string): string {
  return chromiumPath() === undefined ? `${what} (passed over: no Chromium was found; set CHROME_PATH)` : what;
}
