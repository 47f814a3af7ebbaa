import { createHmac } from "node:crypto";

/**
 * HMAC-SHA256 over header, parent header, metadata and content, in lower-case hex.
 * Source: Jupyter messaging protocol, "The Wire Protocol", signature scheme hmac-sha256; RFC 2104.
 */
export function signature(key: string | Uint8Array, parts: readonly (string | Uint8Array)[]): string {
  const hash = createHmac("sha256", key);
  for (const part of parts) hash.update(part);
  return hash.digest("hex");
}
