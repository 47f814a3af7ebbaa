import { createHmac } from "node:crypto";
import { expect, test } from "vitest";
import { encodeMessage } from "../../../src/run/kernel/encodeMessage.js";

const header = {
  msg_id: "m1",
  session: "s",
  username: "u",
  date: "2026-01-02T03:04:05.000Z",
  msg_type: "execute_request",
  version: "5.3",
} as const;

test("the frames stand in the order of the protocol and are signed over the four parts", () => {
  // Order: Jupyter messaging protocol 5.3, "The Wire Protocol".
  const [delimiter, signed, head, parent, metadata, content, ...more] = encodeMessage("key", header, { code: "é" });
  expect(delimiter).toBe("<IDS|MSG>");
  expect(JSON.parse(head ?? "")).toEqual(header);
  expect([parent, metadata, content, more]).toEqual(["{}", "{}", '{"code":"é"}', []]);
  expect(signed).toBe(
    createHmac("sha256", "key")
      .update(`${head ?? ""}{}{}{"code":"é"}`)
      .digest("hex"),
  );
});
