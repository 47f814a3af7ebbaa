import type { ParameterValue, PlainValue } from "./ParameterValue.js";

/** A value and the text that follows it. */
interface Read<T> {
  readonly value: T;
  readonly rest: string;
}

const escapes: Readonly<Record<string, string>> = { n: "\n", t: "\t", r: "\r", b: "\b", f: "\f", v: "\v", "0": "\0" };

function unescaped(body: string): string {
  return body.replace(
    /\\(?:u([0-9a-fA-F]{4})|u\{([0-9a-fA-F]{1,6})\}|x([0-9a-fA-F]{2})|([\s\S]))/gu,
    (whole, ...found: unknown[]) => {
      const [short, long, byte, letter] = found as (string | undefined)[];
      const code = short ?? long ?? byte;
      if (code !== undefined) return String.fromCodePoint(Math.min(parseInt(code, 16), 0x10ffff));
      return escapes[letter ?? ""] ?? letter ?? whole;
    },
  );
}

function plain(text: string): Read<PlainValue> | null {
  const word = /^(true|false|null)\b/.exec(text)?.[1];
  if (word !== undefined) return { value: JSON.parse(word) as PlainValue, rest: text.slice(word.length) };
  const number = /^[+-]?(?:\d[\d_]*\.?\d*|\.\d+)(?:[eE][+-]?\d+)?(?![\w.$])/.exec(text)?.[0];
  if (number !== undefined) return { value: Number(number.replaceAll("_", "")), rest: text.slice(number.length) };
  const string = /^"(?:[^"\\\n]|\\.)*"|^'(?:[^'\\\n]|\\.)*'|^`(?:[^`\\$\n]|\\.|\$(?!\{))*`/.exec(text)?.[0];
  return string === undefined ? null : { value: unescaped(string.slice(1, -1)), rest: text.slice(string.length) };
}

function list(text: string): Read<readonly PlainValue[]> | null {
  const values: PlainValue[] = [];
  let rest = text.slice(1).trimStart();
  while (!rest.startsWith("]")) {
    const item = plain(rest);
    if (item === null) return null;
    values.push(item.value);
    rest = item.rest.trimStart();
    if (rest.startsWith(",")) rest = rest.slice(1).trimStart();
    else if (!rest.startsWith("]")) return null;
  }
  return { value: values, rest: rest.slice(1) };
}

/**
 * The plain value a piece of TypeScript begins with (a string, number, `true`, `false`, `null`, or a list of those), and the
 * text after it. Null when it begins with anything that would have to be computed.
 */
export function literalValue(text: string): Read<ParameterValue> | null {
  return text.startsWith("[") ? list(text) : plain(text);
}
