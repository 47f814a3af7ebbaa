import { expect, test } from "vitest";
import { streamText } from "../../src/run/streamText.js";

test("only the text of the stream asked for, in order", () => {
  const outputs = [
    { output_type: "stream", name: "stdout", text: "a" },
    { output_type: "display_data", data: { "text/plain": "x" }, metadata: {} },
    { output_type: "stream", name: "stderr", text: "!" },
    { output_type: "stream", name: "stdout", text: "b" },
  ] as const;
  expect([streamText(outputs, "stdout"), streamText(outputs, "stderr"), streamText([], "stdout")]).toEqual(["ab", "!", ""]);
});
