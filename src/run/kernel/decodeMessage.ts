import { timingSafeEqual } from "node:crypto";
import type { Message } from "./Message.js";
import { signature } from "./signature.js";

type Json = Readonly<Record<string, unknown>>;

function jsonObject(frame: Uint8Array): Json | null {
  try {
    const value: unknown = JSON.parse(Buffer.from(frame.buffer, frame.byteOffset, frame.byteLength).toString("utf8"));
    return typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Json) : null;
  } catch {
    return null;
  }
}

function sameText(a: string, b: Uint8Array): boolean {
  const bytes = Buffer.from(a);
  return bytes.length === b.length && timingSafeEqual(bytes, b);
}

/**
 * A message from its frames: any routing or topic frames, delimiter, signature, header, parent header, metadata, content.
 * Null when it was not signed with this key or is not formed as the protocol says; nothing of an unsigned message is parsed.
 * Source: Jupyter messaging protocol 5.3, "The Wire Protocol".
 */
export function decodeMessage(key: string, frames: readonly Uint8Array[]): Message | null {
  const delimiter = frames.findIndex((frame) => sameText("<IDS|MSG>", frame));
  const [signed, ...parts] = delimiter < 0 ? [] : frames.slice(delimiter + 1, delimiter + 6);
  const [header, parent, , content] = parts;
  if (signed === undefined || header === undefined || parent === undefined || content === undefined) return null;
  // Buffers that follow the content are not covered by the signature.
  if (!sameText(signature(key, parts), signed)) return null;
  const [head, above, body] = [jsonObject(header), jsonObject(parent), jsonObject(content)];
  if (head === null || above === null || body === null) return null;
  const { msg_id: id, msg_type: type } = head;
  if (typeof id !== "string" || typeof type !== "string") return null;
  const parentId = above["msg_id"];
  return { type, id, parentId: typeof parentId === "string" ? parentId : null, content: body, contentBytes: content.byteLength };
}
