import { escapeHtml } from "../escapeHtml.js";
import { pageStyle } from "./pageStyle.js";

// Nothing may be loaded and nothing may run, whatever a horse is called.
const policy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'";

/** A page that needs nothing else around what stands in its body: no script, no network; set closely where it is `compact`. */
export function pageFrame(title: string, body: readonly string[], compact = false): string {
  return [
    `<!DOCTYPE html>`,
    `<html lang="en-GB">`,
    `<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">`,
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    `<title>${escapeHtml(title)}</title>`,
    `<style>${pageStyle}</style></head>`,
    compact ? `<body class="compact">` : `<body>`,
    ...body,
    `</body>`,
    `</html>`,
    ``,
  ].join("\n");
}
