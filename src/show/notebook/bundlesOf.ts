import { partsOf, type Part, type Showable } from "../partsOf.js";
import { partText } from "../text/partText.js";
import { chartBundle } from "./chartBundle.js";
import type { MimeBundle } from "./MimeBundle.js";
import { partHtml } from "./partHtml.js";
import { rowBundles } from "./rowBundles.js";

const textWidth = 100;

/**
 * What a notebook is sent for one item, in order: one bundle for a chart or a table; for an answer its words and tables in
 * between its charts. Words of the caller go as Markdown.
 */
export async function bundlesOf(item: Showable): Promise<MimeBundle[]> {
  if (typeof item === "object" && "kind" in item && item.kind === "side_by_side") return rowBundles(item);
  const bundles: MimeBundle[] = [];
  let words: Exclude<Part, { kind: "chart" }>[] = [];
  const flush = () => {
    if (words.length > 0) bundles.push(wordsBundle(words));
    words = [];
  };
  for (const part of partsOf(item)) {
    if (part.kind === "chart") {
      flush();
      bundles.push(await chartBundle(part.chart));
    } else if (part.kind === "markdown") {
      bundles.push({ data: { "text/markdown": part.text, "text/plain": part.text }, metadata: {} });
    } else words.push(part);
  }
  flush();
  return bundles;
}

function wordsBundle(parts: readonly Exclude<Part, { kind: "chart" }>[]): MimeBundle {
  return {
    data: {
      "text/html": parts.map(partHtml).join("\n"),
      "text/plain": parts.map((part) => partText(part, textWidth)).join("\n\n"),
    },
    metadata: {},
  };
}
