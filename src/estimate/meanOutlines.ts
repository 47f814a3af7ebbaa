import type { TracedOutline } from "../derive/TracedOutline.js";
import { grouped } from "../study/grouped.js";
import { generalProcrustes } from "./generalProcrustes.js";
import type { Point } from "./Point.js";
import { resampledOutline } from "./resampledOutline.js";

/** Mean shape of the feet of one end. */
export interface MeanOutline {
  readonly end: "fore" | "hind";
  readonly horses: number;
  readonly outlines: number;
  /** Anticlockwise from the toe; heels and toe of the mean of both ends lie at 0, 0 and 0, 1. */
  readonly mean: readonly Point[];
  /** Two standard deviations between horses, inwards and outwards of the mean; the mean itself with a single horse. */
  readonly inner: readonly Point[];
  readonly outer: readonly Point[];
}

/**
 * Mean outline of front and of hind feet with the spread between horses, at one size, to be laid over each other.
 *
 * Method: each wall is cut into points at equal steps from the toe (`resampledOutline`) and laid, heels with it, over all others
 * (`generalProcrustes`); outlines of a horse's end are averaged, then horses, so that every horse counts once. The whole is then turned
 * and sized by the toe and heels of the mean of both ends, so that differences in length between the ends stay visible. The spread is twice the
 * SD over horses of the distance from the mean, at right angles to it, where some 95 % of horses lie. Outlines must be mirrored to one side before: `tracedOutlines` with
 * `mirrorLeft`.
 *
 * Missing: outlines that are not usable and specimens are left out; an end without a foot has no mean.
 *
 * Errors (`EstimateError`): those of `resampledOutline` and `generalProcrustes`, so `too_few` for fewer than two outlines.
 *
 * Source: as in the functions named; the spread along the normal is common practice, no source.
 */
export function meanOutlines(outlines: readonly TracedOutline[], options: { readonly points?: number } = {}): MeanOutline[] {
  const n = options.points ?? 120;
  const used = outlines.flatMap((outline) =>
    outline.usable && outline.landmarks !== null && outline.side !== null ? [{ ...outline, landmarks: outline.landmarks }] : [],
  );
  const shapes = used.map(({ wall, landmarks }) => [
    ...resampledOutline(wall, n, { start: landmarks.toe, open: "close" }),
    landmarks.heelMedial,
    landmarks.heelLateral,
  ]);
  const { aligned } = generalProcrustes(shapes);
  const ends = (["fore", "hind"] as const).flatMap((end) => {
    const own = used.flatMap(({ horseId, end: of }, place) => (of === end ? [{ horseId, shape: aligned[place]! }] : []));
    if (own.length === 0) return [];
    const horses = [...grouped(own, ({ horseId }) => horseId).values()].map((feet) => meanOf(feet.map(({ shape }) => shape)));
    return [{ end, horses, outlines: own.length }];
  });
  const common = meanOf(ends.map(({ horses }) => meanOf(horses)));
  const frame = frameOf(common[0]!, common[n]!, common[n + 1]!);
  return ends.map(({ end, horses, outlines: count }) => {
    const framed = horses.map((shape) => shape.slice(0, n).map(frame));
    return { end, horses: horses.length, outlines: count, ...withSpread(framed) };
  });
}

function withSpread(horses: readonly (readonly Point[])[]): Pick<MeanOutline, "mean" | "inner" | "outer"> {
  const mean = meanOf(horses);
  const n = mean.length;
  const normals = mean.map((_, k) => {
    const [before, after] = [mean[(k + n - 1) % n]!, mean[(k + 1) % n]!];
    const length = Math.hypot(after.x - before.x, after.y - before.y) || 1;
    // Anticlockwise, the outside lies on the right.
    return { x: (after.y - before.y) / length, y: (before.x - after.x) / length };
  });
  const sds = mean.map(({ x, y }, k) => {
    const away = horses.map((shape) => (shape[k]!.x - x) * normals[k]!.x + (shape[k]!.y - y) * normals[k]!.y);
    return horses.length < 2 ? 0 : Math.sqrt(away.reduce((sum, value) => sum + value ** 2, 0) / (horses.length - 1));
  });
  const moved = (sign: 1 | -1) =>
    mean.map(({ x, y }, k) => ({ x: x + 2 * sign * sds[k]! * normals[k]!.x, y: y + 2 * sign * sds[k]! * normals[k]!.y }));
  return { mean, inner: moved(-1), outer: moved(1) };
}

function meanOf(shapes: readonly (readonly Point[])[]): Point[] {
  return shapes[0]!.map((_, k) => ({
    x: shapes.reduce((sum, shape) => sum + shape[k]!.x, 0) / shapes.length,
    y: shapes.reduce((sum, shape) => sum + shape[k]!.y, 0) / shapes.length,
  }));
}

function frameOf(toe: Point, heelOne: Point, heelOther: Point): (point: Point) => Point {
  const [x0, y0] = [(heelOne.x + heelOther.x) / 2, (heelOne.y + heelOther.y) / 2];
  const [dx, dy] = [toe.x - x0, toe.y - y0];
  const square = dx * dx + dy * dy;
  return ({ x, y }) => ({
    x: ((x - x0) * dy - (y - y0) * dx) / square,
    y: ((x - x0) * dx + (y - y0) * dy) / square,
  });
}
