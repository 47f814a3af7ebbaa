import fc from "fast-check";
import { expect, test } from "vitest";
import type { Message } from "../../src/run/kernel/Message.js";
import { outputCollector } from "../../src/run/outputCollector.js";
import { notebookOf } from "./notebookOf.js";
import { schemaFaults } from "./schemaFaults.js";

const message = (type: string, content: Record<string, unknown>, parentId: string | null = "r1"): Message => ({
  type,
  id: "m",
  parentId,
  content,
  contentBytes: JSON.stringify(content).length,
});
const stream = (name: string, text: string) => message("stream", { name, text });

test("stream texts that follow each other are one output", () => {
  const collector = outputCollector();
  const outputs = collector.begin("r1");
  for (const [name, text] of [
    ["stdout", "a"],
    ["stdout", "b"],
    ["stderr", "!"],
    ["stdout", "c"],
  ] as const)
    collector.take(stream(name, text));
  expect(outputs).toEqual([
    { output_type: "stream", name: "stdout", text: "ab" },
    { output_type: "stream", name: "stderr", text: "!" },
    { output_type: "stream", name: "stdout", text: "c" },
  ]);
});

test("an update changes its display where it stands, in whichever cell, and nothing else", () => {
  const collector = outputCollector();
  const [first, second] = [collector.begin("r1"), collector.begin("r2")];
  const shown = (text: string, id?: string) => ({ data: { "text/plain": text }, metadata: {}, transient: { display_id: id } });
  collector.take(message("display_data", shown("1", "d")));
  collector.take(message("display_data", shown("alone")));
  collector.take(message("execute_result", { ...shown("2", "d"), execution_count: 2 }, "r2"));
  const bytes = collector.bytes();
  collector.take(message("update_display_data", { ...shown("new", "d"), metadata: { a: 1 } }, "r2"));
  collector.take(message("update_display_data", shown("nobody's", "other"), "r2"));
  expect(first).toEqual([
    { output_type: "display_data", data: { "text/plain": "new" }, metadata: { a: 1 } },
    { output_type: "display_data", data: { "text/plain": "alone" }, metadata: {} },
  ]);
  expect(second).toEqual([
    { output_type: "execute_result", data: { "text/plain": "new" }, metadata: { a: 1 }, execution_count: 2 },
  ]);
  expect(collector.bytes()).toBe(bytes);
});

test("JSON stays a value, everything else becomes text", () => {
  const collector = outputCollector();
  const outputs = collector.begin("r1");
  collector.take(
    message("display_data", { data: { "application/vnd.vegalite.v5+json": { mark: "bar" }, "text/html": { not: "text" } } }),
  );
  expect(outputs).toEqual([
    {
      output_type: "display_data",
      data: { "application/vnd.vegalite.v5+json": { mark: "bar" }, "text/html": '{"not":"text"}' },
      metadata: {},
    },
  ]);
});

test("output after the end of a request is kept and counts as late; faults of nobody are noted", () => {
  const collector = outputCollector();
  const outputs = collector.begin("r1");
  collector.take(stream("stderr", "UnhandledPromiseRejection: Error: unseen\n    at x"));
  collector.take(stream("stderr", "it said UnhandledPromiseRejection: in a sentence"));
  expect(collector.looseFaults()).toEqual(["Error: unseen\n    at x"]);
  collector.close("r1");
  expect(collector.isLate("r1")).toBe(false);
  collector.take(message("status", { execution_state: "idle" }));
  expect(collector.isLate("r1")).toBe(false);
  collector.take(stream("stdout", "late"));
  expect(collector.isLate("r1")).toBe(true);
  expect(outputs.at(-1)).toEqual({ output_type: "stream", name: "stdout", text: "late" });
});

test("whatever a kernel sends, the outputs are valid nbformat", () => {
  const type = fc.constantFrom(
    "stream",
    "display_data",
    "execute_result",
    "error",
    "update_display_data",
    "clear_output",
    "comm_open",
    "",
  );
  const field = fc.constantFrom(
    "name",
    "text",
    "data",
    "metadata",
    "transient",
    "execution_count",
    "ename",
    "evalue",
    "traceback",
    "wait",
  );
  const mimes = fc.dictionary(
    fc.constantFrom("text/plain", "image/png", "application/json", "application/x+json", ""),
    fc.jsonValue(),
  );
  const value = fc.oneof(fc.jsonValue(), mimes, fc.constant({ display_id: "d" }), fc.string());
  const sent = fc.array(fc.tuple(type, fc.dictionary(field, value), fc.constantFrom("r1", "other", null)), { maxLength: 12 });
  fc.assert(
    fc.property(sent, (messages) => {
      const collector = outputCollector();
      const outputs = collector.begin("r1");
      for (const [kind, content, parent] of messages) collector.take(message(kind, content, parent));
      const [cell] = notebookOf("1").cells;
      expect(schemaFaults({ ...notebookOf(), cells: [{ ...cell!, outputs } as typeof cell & object] })).toEqual([]);
    }),
  );
});
