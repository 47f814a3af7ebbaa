import { expect, test } from "vitest";
import { markedEncoding } from "../../../src/read/text/markedEncoding.js";

// The marks: The Unicode Standard, version 15, table 23-6.
test("the three marks are told apart, and anything else is none", () => {
  expect(markedEncoding(Buffer.from([0xef, 0xbb, 0xbf, 0x61]))).toEqual({ encoding: "utf-8", bigEndian: false });
  expect(markedEncoding(Buffer.from([0xff, 0xfe, 0x61, 0]))).toEqual({ encoding: "utf-16", bigEndian: false });
  expect(markedEncoding(Buffer.from([0xfe, 0xff, 0, 0x61]))).toEqual({ encoding: "utf-16", bigEndian: true });
  for (const none of [[], [0xef, 0xbb], [0xff], [0x61, 0x62]]) expect(markedEncoding(Buffer.from(none))).toBeNull();
});
