import type { Source } from "../../study/Source.js";

/** Remembers where a key was first met; returns that place when it is met again, null the first time. */
export function firstLines(): (key: string, source: Source) => Source | null {
  const first = new Map<string, Source>();
  return (key, source) => {
    const earlier = first.get(key);
    if (earlier !== undefined) return earlier;
    first.set(key, source);
    return null;
  };
}
