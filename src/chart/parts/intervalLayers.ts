import { palette } from "./palette.js";

type Encoding = Readonly<Record<string, unknown>>;

/** What the points stand on, and how their values are written. */
export interface IntervalAxes {
  /** Encoding of the place along which the groups stand. */
  readonly x: Encoding;
  /** Encoding of the value, without its field: type, title, scale, axis. */
  readonly y: Encoding;
  /** Tooltip entries of point and interval. */
  readonly tooltip: readonly Encoding[];
}

const small = (then: unknown, otherwise: unknown) => ({ condition: { test: "datum.tooFew", value: then }, value: otherwise });

/**
 * Layers for estimates with intervals: a bar from `lower` to `upper` and a point at `estimate`, fields of the same names. Rows with
 * `tooFew` are grey, dashed and hollow. A missing limit draws no bar, a missing estimate no point.
 */
export function intervalLayers(axes: IntervalAxes): Record<string, unknown>[] {
  const { x, y, tooltip } = axes;
  return [
    {
      transform: [{ filter: "isValid(datum.lower) && isValid(datum.upper)" }],
      mark: { type: "rule", strokeWidth: 2.5, strokeCap: "butt" },
      encoding: {
        x,
        y: { ...y, field: "lower" },
        y2: { field: "upper" },
        color: small(palette.grey, palette.blue),
        strokeDash: small([3, 3], [1, 0]),
        tooltip,
      },
    },
    {
      transform: [{ filter: "isValid(datum.estimate)" }],
      mark: { type: "point", shape: "circle", size: 55, strokeWidth: 2, opacity: 1 },
      encoding: {
        x,
        y: { ...y, field: "estimate" },
        fill: small(palette.paper, palette.blue),
        stroke: small(palette.grey, palette.blue),
        tooltip,
      },
    },
  ];
}
