import { exposureWords } from "./exposureWords.js";

/** What an amount of the exposure is called: `10 mm of rain of 14 days`. */
export function stepWords(column: string, per: number | string): string {
  const words = exposureWords(column);
  const [, unit] = /\((mm)\)$/.exec(words) ?? [];
  return unit === undefined ? `${per} ${words}` : `${per} ${unit} of ${words.replace(/ \(mm\)$/, "")}`;
}
