import { wrapped } from "../../chart/parts/wrapped.js";
import type { Part } from "../partsOf.js";
import { tableText } from "./tableText.js";

/** A part in plain text, at most `width` characters wide. */
export function partText(part: Part, width: number): string {
  switch (part.kind) {
    case "title":
      return underlined(part.text, "=", width);
    case "sentence":
      return wrapped(part.text, width).join("\n");
    case "markdown":
      return part.text;
    case "method":
      return wrapped(`Method: ${part.text}`, width).join("\n");
    case "cautions":
      return ["Cautions", ...part.items.flatMap((item) => hanging(item, width))].join("\n");
    case "chart":
      return [...wrapped(part.chart.title, width), ...wrapped(part.chart.reading, width)].join("\n");
    case "table":
      return tableText(part.table, width);
  }
}

function underlined(text: string, rule: string, width: number): string {
  const lines = wrapped(text, width);
  return [...lines, rule.repeat(Math.max(0, ...lines.map((line) => line.length)))].join("\n");
}

function hanging(text: string, width: number): string[] {
  return wrapped(text, width - 2).map((line, index) => `${index === 0 ? "- " : "  "}${line}`);
}
