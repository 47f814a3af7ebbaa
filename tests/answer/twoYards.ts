import type { Study } from "../../src/study/Study.js";
import { herd } from "./herd.js";

const days = ["2025-01-06", "2025-02-17", "2025-03-31"] as const;

/**
 * Six horses A1 to A6 at North and six D1 to D6 at South, seen on three days, near fore and near hind. `north` and `south` say at how many
 * of a horse's six looks there was thrush: look p (fore of the three days 0 to 2, hind 3 to 5) of horse i, counted from 0, has it
 * when (p + i) mod 6 is below that number.
 */
export function twoYards(north: readonly number[], south: readonly number[]): Study {
  const looks = (count: number, i: number) => {
    const grade = (p: number) => Number((p + i) % 6 < count);
    return days.map((day, k): [string, number, number] => [day, grade(k), grade(k + 3)]);
  };
  const names = (letter: string, counts: readonly number[]) =>
    counts.map((count, i) => [`${letter}${i + 1}`, looks(count, i)] as const);
  const study = herd(Object.fromEntries([...names("A", north), ...names("D", south)]));
  const ground: Record<string, string> = { North: "peat", South: "sand" };
  return { ...study, yards: study.yards.map((yard) => ({ ...yard, ground: ground[yard.yardId]!, bedding: "straw" })) };
}
