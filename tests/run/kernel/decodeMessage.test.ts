import fc from "fast-check";
import { expect, test } from "vitest";
import { decodeMessage } from "../../../src/run/kernel/decodeMessage.js";
import { encodeMessage } from "../../../src/run/kernel/encodeMessage.js";
import { signature } from "../../../src/run/kernel/signature.js";

const header = {
  msg_id: "m1",
  session: "s",
  username: "u",
  date: "2026-01-02T03:04:05.000Z",
  msg_type: "stream",
  version: "5.3",
} as const;
const buffers = (frames: readonly string[]) => frames.map((frame) => Buffer.from(frame));
const signed = (key: string, parts: readonly string[]) => buffers(["topic", "<IDS|MSG>", signature(key, parts), ...parts]);

test("any content comes back as it was sent, whatever frames stand before it", () => {
  fc.assert(
    fc.property(
      fc.dictionary(fc.string({ unit: "binary" }), fc.jsonValue()),
      fc.array(fc.uint8Array({ maxLength: 40 })),
      (content, before) => {
        const frames = [
          ...before.filter((frame) => Buffer.from(frame).toString() !== "<IDS|MSG>"),
          ...buffers(encodeMessage("key", header, content)),
        ];
        expect(decodeMessage("key", frames)).toEqual({
          type: "stream",
          id: "m1",
          parentId: null,
          content: JSON.parse(JSON.stringify(content)) as unknown,
          contentBytes: Buffer.byteLength(JSON.stringify(content)),
        });
      },
    ),
  );
});

test("the parent's id is found, and buffers after the content are let be", () => {
  const parts = ['{"msg_id":"a","msg_type":"status"}', '{"msg_id":"b"}', "{}", '{"execution_state":"idle"}'];
  const frames = [...signed("key", parts), Buffer.from([1, 2])];
  expect(decodeMessage("key", frames)).toMatchObject({
    type: "status",
    id: "a",
    parentId: "b",
    content: { execution_state: "idle" },
  });
});

test("another key, or a change of one bit in what is signed, makes it no message", () => {
  const frames = buffers(encodeMessage("key", header, { text: "a" }));
  expect(decodeMessage("key", frames)).not.toBeNull();
  expect(decodeMessage("kex", frames)).toBeNull();
  fc.assert(
    fc.property(fc.nat(), fc.nat(), fc.integer({ min: 0, max: 7 }), (part, place, bit) => {
      const changed = frames.map((frame) => Buffer.from(frame));
      const frame = changed[1 + (part % 5)]!;
      frame[place % frame.length]! ^= 1 << bit;
      expect(decodeMessage("key", changed)).toBeNull();
    }),
  );
});

test("signed messages that are not formed as the protocol says are no messages", () => {
  const head = '{"msg_id":"a","msg_type":"stream"}';
  expect(decodeMessage("key", signed("key", [head, "{}", "{}", "{}"]))).not.toBeNull();
  for (const parts of [
    [],
    [head],
    [head, "{}", "{}"],
    ["not json", "{}", "{}", "{}"],
    [head, "[]", "{}", "{}"],
    [head, "{}", "{}", "null"],
    [head, "{}", "{}", "{"],
    ['{"msg_id":7,"msg_type":"stream"}', "{}", "{}", "{}"],
    ['{"msg_id":"a"}', "{}", "{}", "{}"],
  ]) {
    expect(decodeMessage("key", signed("key", parts)), parts.join(" ")).toBeNull();
  }
});

test("no frames whatever make it throw", () => {
  const frame = fc.oneof(
    fc.uint8Array(),
    fc.constant(Buffer.from("<IDS|MSG>")),
    fc.json().map((text) => Buffer.from(text)),
  );
  fc.assert(
    fc.property(fc.array(frame, { maxLength: 9 }), (frames) => {
      expect(decodeMessage("key", frames)).toBeNull();
    }),
  );
  // The same with a sound signature, so that the parsing is reached.
  fc.assert(
    fc.property(fc.array(fc.oneof(fc.string(), fc.json()), { maxLength: 6 }), (parts) => {
      const message = decodeMessage("key", signed("key", parts.slice(0, 4)));
      if (message !== null) expect(typeof message.type).toBe("string");
    }),
  );
});
