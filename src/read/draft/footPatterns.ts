import type { Foot } from "../../study/Foot.js";

/** Headers that name a foot each, alike but for the foot. */
export interface FootPattern {
  /** The header with `{foot}` in the place of the foot, as `study.json` writes it. */
  readonly pattern: string;
  /** Index of the header, by foot. */
  readonly at: ReadonlyMap<Foot, number>;
}

/** The headers of a file with one row a visit. */
export interface FootHeaders {
  readonly patterns: readonly FootPattern[];
  /** How each foot is spelt there. */
  readonly spellings: Readonly<Partial<Record<Foot, readonly string[]>>>;
}

const SIDES = { L: "left|near|links|l|n", R: "right|off|rechts|r|o" };
const ENDS = { F: "fore|front|vorne|vorn|f|v", H: "hind|back|hinten|h" };
const FEET = ["LF", "RF", "LH", "RH"] as const satisfies readonly Foot[];

/**
 * Finds headers such as `NF thrush` and `OF thrush`, alike but for the foot. One header that seems to name a foot is none: in `Date of visit` stands no off fore.
 * null: the file has no such headers.
 */
export function footPatterns(header: readonly string[]): FootHeaders | null {
  const found = new Map<string, { pattern: string; feet: Map<Foot, { at: number; spelt: string }> }>();
  header.forEach((name, at) => {
    for (const foot of FEET) {
      const spelt = spellingIn(name, foot);
      if (spelt === null) continue;
      const pattern = name.trim().replace(spelt, "{foot}");
      const key = pattern.toLowerCase();
      const entry = found.get(key) ?? { pattern, feet: new Map() };
      if (!entry.feet.has(foot)) entry.feet.set(foot, { at, spelt });
      found.set(key, entry);
    }
  });
  const several = [...found.values()].filter(({ feet }) => feet.size > 1);
  if (several.length === 0) return null;
  const spellings: Partial<Record<Foot, string[]>> = {};
  for (const { feet } of several) {
    for (const [foot, { spelt }] of feet) {
      const known = (spellings[foot] ??= []);
      if (!known.includes(spelt)) known.push(spelt);
    }
  }
  const patterns = several.map(({ pattern, feet }) => ({ pattern, at: new Map([...feet].map(([foot, { at }]) => [foot, at])) }));
  return { patterns, spellings };
}

function spellingIn(name: string, foot: (typeof FEET)[number]): string | null {
  const side = SIDES[foot.charAt(0) as "L" | "R"];
  const end = ENDS[foot.charAt(1) as "F" | "H"];
  const both = `(?:${side})[\\s_.-]*(?:${end})|(?:${end})[\\s_.-]*(?:${side})`;
  return new RegExp(`(?<![\\p{L}\\p{N}])(?:${both})(?![\\p{L}\\p{N}])`, "iu").exec(name)?.[0] ?? null;
}
