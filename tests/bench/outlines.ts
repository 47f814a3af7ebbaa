import { ellipticFourier } from "../../src/estimate/ellipticFourier.js";
import { medialLateralAsymmetry } from "../../src/estimate/medialLateralAsymmetry.js";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";
import { outlineMoments } from "../../src/estimate/outlineMoments.js";
import type { Point } from "../../src/estimate/Point.js";
import { resampledOutline } from "../../src/estimate/resampledOutline.js";
import { toeTaper } from "../../src/estimate/toeTaper.js";
import { footOutline } from "../estimate/footOutline.js";

/** How long it takes to describe traced outlines wholly. */
export interface OutlinesFigure {
  readonly benchmark: "outlines";
  readonly outlines: number;
  readonly points: number;
  readonly seconds: number;
  /** Processor time, all threads: what `seconds` would be near on a machine with nothing else to do. */
  readonly cpuSeconds: number;
}

const OUTLINES = 100_000;
const POINTS = 200;

/** 100,000 outlines of 200 points: size and form, toe taper, asymmetry and ten harmonics of each; the time of making them is left out. */
export function outlines(print: (figure: OutlinesFigure) => void): void {
  const random = seededRandom("outlines");
  const plan = { length: 130, halfWidth: 65, roundness: 2, widest: 0.65, heel: 0.8, lateralExcess: 0.04 };
  const { points: drawn, landmarks } = footOutline(plan);
  const points = resampledOutline(drawn, POINTS, { start: landmarks.toe });
  const trace = (): Point[] => points.map(({ x, y }) => ({ x: x + random.normal(0, 0.2), y: y + random.normal(0, 0.2) }));
  let [seconds, cpuSeconds, sum] = [0, 0, 0];
  for (let done = 0; done < OUTLINES; done += 1000) {
    const batch = Array.from({ length: 1000 }, trace);
    const [start, before] = [performance.now(), process.cpuUsage()];
    for (const outline of batch) {
      sum += outlineMoments(outline).circularity + toeTaper(outline, landmarks).taper;
      sum += medialLateralAsymmetry(outline, landmarks).areaAsymmetry + ellipticFourier(outline, { normalise: landmarks }).a0;
    }
    seconds += (performance.now() - start) / 1000;
    const { user, system } = process.cpuUsage(before);
    cpuSeconds += (user + system) / 1e6;
  }
  if (!Number.isFinite(sum)) throw new Error("an outline was not described");
  print({ benchmark: "outlines", outlines: OUTLINES, points: POINTS, seconds, cpuSeconds });
}

if (process.argv[1] === import.meta.filename) {
  outlines((figure) => {
    console.log(JSON.stringify(figure));
  });
}
