import { ownCopy } from "../text/ownCopy.js";

const SHOWN = 60;

/** Text as it is shown in a message: in quotes, at most 60 characters, line breaks and control characters made visible. */
export function quoted(text: string): string {
  const cut = ownCopy(text.length > SHOWN ? `${text.slice(0, SHOWN)}…` : text);
  return `"${cut.replace(/\p{Cc}/gu, (mark) => (mark === "\n" ? "⏎" : "�"))}"`;
}
