/** An element of a page: its name, its attributes as a reader's program sees them, and the text in it. */
export interface Element {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  text: string;
}

const empty = new Set(["meta", "link", "img", "br", "hr", "input"]);
const entities: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', "#39": "'" };

/**
 * The elements of a strictly written page, in order. Stricter than a browser, which mends what it can.
 * @throws Error when a tag is left open, closed out of turn, written without quotes, or a bare `<` or `&` stands in a text.
 */
export function elements(html: string): Element[] {
  const found: Element[] = [];
  const open: Element[] = [];
  // Style is raw text up to its end tag.
  const text = html.replace(/^<!DOCTYPE html>/, "").replace(/(<style>)[^<]*/g, "$1");
  const token = /<(\/?)([A-Za-z][\w:-]*)((?:\s+[\w:-]+="[^"<]*")*)\s*(\/?)>|([^<]+)|(<)/g;
  for (const [whole, closing, name = "", attributes = "", selfClosing, words, stray] of text.matchAll(token)) {
    if (stray !== undefined) throw new Error("A bare < stands in the page.");
    if (words !== undefined) {
      for (const element of open) element.text += decoded(words);
    } else if (closing === "/") {
      const last = open.pop();
      if (last?.name !== name) throw new Error(`${whole} closes ${last?.name ?? "nothing"}.`);
    } else {
      const pairs = [...attributes.matchAll(/([\w:-]+)="([^"]*)"/g)].map((match): [string, string] => [
        match[1] ?? "",
        decoded(match[2] ?? ""),
      ]);
      const element = { name, attributes: new Map(pairs), text: "" };
      if (element.attributes.size !== pairs.length) throw new Error(`${whole} says an attribute twice.`);
      found.push(element);
      if (selfClosing !== "/" && !empty.has(name)) open.push(element);
    }
  }
  if (open.length > 0) throw new Error(`${open.map((element) => element.name).join(", ")} left open.`);
  return found;
}

function decoded(text: string): string {
  return text.replace(/&(?:(#?\w+);)?/g, (whole, name: string | undefined) => {
    const letter = name === undefined ? undefined : entities[name];
    if (letter === undefined) throw new Error(`${whole} stands bare in "${text.slice(0, 60)}".`);
    return letter;
  });
}
