import { fabricChecks } from "../../src/answer/fabricChecks.js";
import { readStudy } from "../../src/read/readStudy.js";
import type { Study } from "../../src/study/Study.js";

/** Time of all checks of the fabric on a million rows: the demo many times over, each copy with horses, yards and observers of its own. */
export async function fabric(): Promise<object> {
  const demo = await readStudy("data-demo", { today: "2026-03-01" });
  const copies = Math.ceil(1_000_000 / demo.visits.length);
  const visits: Study["visits"][number][] = [];
  const horses: Study["horses"][number][] = [];
  const yards: Study["yards"][number][] = [];
  for (let copy = 0; copy < copies; copy++) {
    const own = (name: string) => `${name} ${String(copy)}`;
    for (const row of demo.visits) {
      // Otherwise every horse would be many horses with the same measures: 221 copies differ in one of the two.
      const hoofWidthMm = row.hoofWidthMm === null ? null : row.hoofWidthMm + (copy % 13);
      const toeLengthMm = row.toeLengthMm === null ? null : row.toeLengthMm + (copy % 17);
      const observerId = row.observerId === null ? null : `${row.observerId} ${String(copy % 50)}`;
      visits.push({ ...row, horseId: own(row.horseId), observerId, hoofWidthMm, toeLengthMm, line: visits.length + 2 });
    }
    for (const stay of demo.horses) horses.push({ ...stay, horseId: own(stay.horseId), yardId: own(stay.yardId ?? "") });
    for (const yard of demo.yards) yards.push({ ...yard, yardId: own(yard.yardId) });
  }
  const [start, before] = [performance.now(), process.cpuUsage()];
  const doubts = fabricChecks({ ...demo, visits, horses, yards }).length;
  const { user, system } = process.cpuUsage(before);
  const seconds = (ms: number) => Math.round(ms / 100) / 10;
  return {
    benchmark: "fabric",
    rows: visits.length,
    seconds: seconds(performance.now() - start),
    processorSeconds: seconds((user + system) / 1000),
    doubts,
  };
}
