const SIDES = new Map([
  ["l", "L"],
  ["left", "L"],
  ["near", "L"],
  ["n", "L"],
  ["r", "R"],
  ["right", "R"],
  ["off", "R"],
  ["o", "R"],
]);

const ENDS = new Map([
  ["f", "F"],
  ["fore", "F"],
  ["front", "F"],
  ["h", "H"],
  ["hind", "H"],
  ["back", "H"],
]);

/**
 * The code of a foot from the ways it is written: `LF`, `lf`, `NF` (near is left, off is right: common practice, no source),
 * `near fore`, `left-hind`, `F` or `hind` alone for a specimen of unknown side, `U` or `unknown` for one of unknown end, `LF specimen` and the like for one of known side. Any other text comes back as it is.
 */
export function footCode(text: string): string {
  const specimen = /^(.*[^\s_-])[\s_-]+specimen\s*$/i.exec(text)?.[1];
  if (specimen === undefined) return standingCode(text);
  const code = standingCode(specimen);
  if (code === specimen && !/^([LR]?[FH]|U)$/.test(code)) return text;
  return code.length === 2 ? `${code}_specimen` : code;
}

function standingCode(text: string): string {
  const words = text
    .trim()
    .toLowerCase()
    .split(/[\s_-]+/);
  const [word = ""] = words;
  if (words.length === 1 && (word === "u" || word === "unknown")) return "U";
  const parts = words.length === 1 && word.length === 2 ? [word.charAt(0), word.charAt(1)] : words;
  const side = parts.length === 2 ? SIDES.get(parts[0] ?? "") : "";
  const end = ENDS.get(parts.at(-1) ?? "");
  return side === undefined || end === undefined || parts.length > 2 ? text : side + end;
}
