import { mutations } from "../read/mutations.js";

const CHUNKS = 80;
const CHUNK = 500;

/** The long run of the mutation test: more than 100,000 damaged files, seeds 1 to 80. Throws with the smallest study that breaks a promise. */
export async function longMutations(seeds = CHUNKS): Promise<Readonly<Record<string, string | number>>> {
  const started = performance.now();
  const total = { studies: 0, mutatedFiles: 0, studiesRefused: 0, rowsRead: 0, rowsSetAside: 0 };
  for (let seed = 1; seed <= seeds; seed++) {
    const { refused, ...met } = await mutations(CHUNK, seed);
    total.studies += met.studies;
    total.mutatedFiles += met.mutatedFiles;
    total.rowsRead += met.rowsRead;
    total.rowsSetAside += met.rowsSetAside;
    total.studiesRefused += Object.values(refused).reduce((sum, count) => sum + count, 0);
  }
  return { name: "damaged files", seconds: Math.round((performance.now() - started) / 1000), ...total };
}
