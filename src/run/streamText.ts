import type { NotebookOutput } from "./Notebook.js";

/** All text a cell wrote to one of its streams. @private */
export function streamText(outputs: readonly NotebookOutput[], name: "stdout" | "stderr"): string {
  return outputs.map((output) => (output.output_type === "stream" && output.name === name ? output.text : "")).join("");
}
