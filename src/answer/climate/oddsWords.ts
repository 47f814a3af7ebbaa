import { cellText } from "../../chart/cellText.js";
import { levelText } from "../../chart/parts/levelText.js";

/** An odds ratio with its interval: `1.15 (95% interval 1.09 to 1.20)`. */
export function oddsWords(of: {
  readonly estimate: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly level: number;
}): string {
  const number = (value: number) => cellText(value, { digits: 2 });
  if (of.estimate === null) return "not estimated";
  if (of.lower === null || of.upper === null) return `${number(of.estimate)} (too little for an interval)`;
  return `${number(of.estimate)} (${levelText(of.level)} interval ${number(of.lower)} to ${number(of.upper)})`;
}
