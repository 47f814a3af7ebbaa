import type { Ring } from "./Ring.js";

/** Coefficients a, b, c, d of each harmonic in turn, and the means along the outline. */
export interface FourierSums {
  readonly table: Float64Array;
  readonly a0: number;
  readonly c0: number;
}

/**
 * Fourier coefficients of x and y along an outline, from its first point, in the direction of its points. The circular functions of
 * higher harmonics come from those of the first by the addition theorem.
 */
export function fourierSums({ x, y, step, perimeter }: Ring, count: number): FourierSums {
  const n = x.length;
  const table = new Float64Array(4 * count);
  let [meanX, meanY] = [0, 0];
  let [travelled, cosine, sine] = [0, 1, 0];
  for (let i = 0; i < n; i += 1) {
    const next = i + 1 === n ? 0 : i + 1;
    const dx = x[next]! - x[i]!;
    const dy = y[next]! - y[i]!;
    const length = step[i]!;
    meanX += (x[i]! - x[0]! + dx / 2) * length;
    meanY += (y[i]! - y[0]! + dy / 2) * length;
    travelled += length;
    const angle = (2 * Math.PI * travelled) / perimeter;
    const nextCosine = next === 0 ? 1 : Math.cos(angle);
    const nextSine = next === 0 ? 0 : Math.sin(angle);
    const slopeX = dx / length;
    const slopeY = dy / length;
    let c = cosine;
    let s = sine;
    let nextC = nextCosine;
    let nextS = nextSine;
    for (let k = 0; k < table.length; k += 4) {
      const cosines = nextC - c;
      const sines = nextS - s;
      table[k]! += slopeX * cosines;
      table[k + 1]! += slopeX * sines;
      table[k + 2]! += slopeY * cosines;
      table[k + 3]! += slopeY * sines;
      const turned = c * cosine - s * sine;
      s = s * cosine + c * sine;
      c = turned;
      const nextTurned = nextC * nextCosine - nextS * nextSine;
      nextS = nextS * nextCosine + nextC * nextSine;
      nextC = nextTurned;
    }
    cosine = nextCosine;
    sine = nextSine;
  }
  for (let k = 0; k < table.length; k += 1) table[k]! *= perimeter / (2 * Math.PI ** 2 * ((k >> 2) + 1) ** 2);
  return { table, a0: x[0]! + meanX / perimeter, c0: y[0]! + meanY / perimeter };
}
