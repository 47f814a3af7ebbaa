import { expect, test } from "vitest";
import { signature } from "../../../src/run/kernel/signature.js";

const bytes = (hex: string) => Buffer.from(hex, "hex");

// Source: RFC 4231, "Identifiers and Test Vectors for HMAC-SHA-224, -256, -384, and -512", sections 4.2 to 4.8, HMAC-SHA-256
// (case 5 is about truncation, which this protocol does not use).
test.each([
  ["4.2", bytes("0b".repeat(20)), Buffer.from("Hi There"), "b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7"],
  [
    "4.3",
    Buffer.from("Jefe"),
    Buffer.from("what do ya want for nothing?"),
    "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843",
  ],
  ["4.4", bytes("aa".repeat(20)), bytes("dd".repeat(50)), "773ea91e36800e46854db8ebd09181a72959098b3ef8c122d9635514ced565fe"],
  [
    "4.5",
    bytes("0102030405060708090a0b0c0d0e0f10111213141516171819"),
    bytes("cd".repeat(50)),
    "82558a389a443c0ea4cc819899f2083a85f0faa3e578f8077a2e3ff46729665b",
  ],
  [
    "4.7",
    bytes("aa".repeat(131)),
    Buffer.from("Test Using Larger Than Block-Size Key - Hash Key First"),
    "60e431591ee0b67f0d8a26aacbf5b77f8e0bc6213728c5140546040f0ee37f54",
  ],
  [
    "4.8",
    bytes("aa".repeat(131)),
    Buffer.from(
      "This is a test using a larger than block-size key and a larger than block-size data. The key needs to be hashed before being used by the HMAC algorithm.",
    ),
    "9b09ffa71b942fcb27635fbcd5b0e944bfdc63644f0713938a7f51535c3a35e2",
  ],
])("RFC 4231, %s", (_section, key, data, digest) => {
  expect(signature(key, [data])).toBe(digest);
  // The parts of a message are signed as one text.
  expect(signature(key, [data.subarray(0, 5), data.subarray(5), new Uint8Array()])).toBe(digest);
});
