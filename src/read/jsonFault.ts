/** Where a text stops being JSON. @private */
export interface JsonFault {
  /** Physical line and column, counted from 1. */
  readonly line: number;
  readonly column: number;
  /** The character there, or `the end of the file`. */
  readonly found: string;
}

const INSIDE_STRING = String.raw`"(?:[^"\\\p{Cc}]|[\x7f-\x9f]|\\["\\/bfnrt]|\\u[0-9a-fA-F]{4})*`;
const NUMBER_OR_WORD = String.raw`-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null`;
const patterns = () => ({
  blank: /[ \t\n\r]*/y,
  scalar: new RegExp(`${INSIDE_STRING}"|${NUMBER_OR_WORD}`, "uy"),
  brokenString: new RegExp(INSIDE_STRING, "uy"),
  key: new RegExp(`${INSIDE_STRING}"[ \\t\\n\\r]*`, "uy"),
});

/**
 * The first place at which a text is not JSON (RFC 8259); null when it is. The engine's own message names the place in some cases only.
 * A string that is not closed is placed where it breaks off.
 */
export function jsonFault(text: string): JsonFault | null {
  const at = faultAt(text);
  if (at === null) return null;
  const before = text.slice(0, at).split(/\r\n|\r|\n/);
  const found =
    at >= text.length
      ? "the end of the file"
      : `the character ${JSON.stringify(String.fromCodePoint(text.codePointAt(at) ?? 0))}`;
  return { line: before.length, column: (before.at(-1) ?? "").length + 1, found };
}

type Expected = "value" | "value or ]" | "key" | "key or }" | "comma or close" | "end";

function faultAt(text: string): number | null {
  const { blank, scalar, brokenString, key } = patterns();
  let at = 0;
  const take = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    const taken = pattern.test(text);
    if (taken) at = pattern.lastIndex;
    return taken;
  };
  const brackets: ("[" | "{")[] = [];
  const afterValue = (): Expected => (brackets.length === 0 ? "end" : "comma or close");
  let expected: Expected = "value";
  for (;;) {
    take(blank);
    const mark = text[at];
    if (expected === "end") return mark === undefined ? null : at;
    if (mark === undefined) return at;
    const closes = expected === "comma or close" || expected.includes(" or ");
    if (closes && expected !== "key or }" && mark === "]" && brackets.at(-1) === "[") {
      brackets.pop();
      at += 1;
      expected = afterValue();
    } else if (closes && mark === "}" && brackets.at(-1) === "{") {
      brackets.pop();
      at += 1;
      expected = afterValue();
    } else if (expected === "comma or close") {
      if (mark !== ",") return at;
      at += 1;
      expected = brackets.at(-1) === "{" ? "key" : "value";
    } else if (expected === "key" || expected === "key or }") {
      if (!take(key)) {
        take(brokenString);
        return at;
      }
      if (text[at] !== ":") return at;
      at += 1;
      expected = "value";
    } else if (mark === "[" || mark === "{") {
      brackets.push(mark);
      at += 1;
      expected = mark === "[" ? "value or ]" : "key or }";
    } else if (take(scalar)) expected = afterValue();
    else {
      take(brokenString);
      return at;
    }
  }
}
