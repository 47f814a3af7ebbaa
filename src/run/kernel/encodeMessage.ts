import { signature } from "./signature.js";

/** What a request says about itself. */
export interface RequestHeader {
  readonly msg_id: string;
  readonly session: string;
  readonly username: string;
  /** ISO 8601. */
  readonly date: string;
  readonly msg_type: string;
  readonly version: "5.3";
}

/**
 * The frames of a request: delimiter, signature, header, parent header, metadata, content.
 * Source: Jupyter messaging protocol 5.3, "The Wire Protocol".
 */
export function encodeMessage(key: string, header: RequestHeader, content: object): string[] {
  const parts = [JSON.stringify(header), "{}", "{}", JSON.stringify(content)];
  return ["<IDS|MSG>", signature(key, parts), ...parts];
}
