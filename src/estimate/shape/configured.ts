import { EstimateError } from "../EstimateError.js";
import type { Points } from "../Points.js";
import type { Configuration } from "./Configuration.js";
import { coordinates } from "./coordinates.js";

/**
 * Landmarks without place and size. `name` says which set is at fault.
 *
 * Errors: `not_a_number`; `too_few` for fewer than two landmarks; `no_variation` when all lie in one place.
 */
export function configured(points: Points, name: string): Configuration {
  const { x, y } = coordinates(points);
  const n = x.length;
  if (n < 2) throw new EstimateError("too_few", `The ${name} has ${n} landmarks.`, "Give two or more; three make a shape.");
  const [originX, originY] = [x[0]!, y[0]!];
  let [sumX, sumY, reach] = [0, 0, 0];
  for (let i = 0; i < n; i += 1) {
    sumX += x[i]! - originX;
    sumY += y[i]! - originY;
    reach = Math.max(reach, Math.abs(x[i]!), Math.abs(y[i]!));
  }
  const [meanX, meanY] = [originX + sumX / n, originY + sumY / n];
  const unit = new Float64Array(2 * n);
  let squares = 0;
  for (let i = 0; i < n; i += 1) {
    const dx = x[i]! - meanX;
    const dy = y[i]! - meanY;
    unit[2 * i] = dx;
    unit[2 * i + 1] = dy;
    squares += dx * dx + dy * dy;
  }
  const size = Math.sqrt(squares);
  if (!(size > 1e-13 * reach)) {
    throw new EstimateError("no_variation", `All landmarks of the ${name} lie in one place.`, "Give landmarks that differ.");
  }
  for (let k = 0; k < unit.length; k += 1) unit[k]! /= size;
  return { unit, meanX, meanY, size };
}
