import { partsOf, type Showable } from "./partsOf.js";
import { partText } from "./text/partText.js";

/**
 * Anything that can be shown, as plain text for a terminal, lines at most `width` characters (words longer than that apart). A chart
 * is its title and its reading. Ends with a line break.
 * @throws RangeError when `width` is under 20.
 */
export function toText(item: Showable, width = 80): string {
  if (!(width >= 20)) throw new RangeError(`Text needs at least 20 characters a line; ${width} were given.`);
  return `${partsOf(item)
    .map((part) => partText(part, width))
    .join("\n\n")}\n`;
}
