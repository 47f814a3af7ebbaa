import { nearestName } from "../../study/nearestName.js";

const MOST_LOOKED_UP = 50;

/**
 * Looks for the known name most like a stranger, for the first 50 different strangers only: comparing every one of very many would take
 * longer than reading the file.
 */
export function nearestKnown(known: Iterable<string>): (stranger: string) => string | null {
  const names = [...known];
  const found = new Map<string, string | null>();
  return (stranger) => {
    const earlier = found.get(stranger);
    if (earlier !== undefined || found.size >= MOST_LOOKED_UP) return earlier ?? null;
    const nearest = nearestName(stranger, names);
    found.set(stranger, nearest);
    return nearest;
  };
}
