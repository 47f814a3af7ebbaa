import type { FootLandmarks } from "./FootLandmarks.js";
import type { OutlineOptions } from "./OutlineOptions.js";
import { requireWithin } from "./numeric/requireWithin.js";
import type { Points } from "./Points.js";
import { footFrame } from "./shape/footFrame.js";
import { ringOf } from "./shape/ringOf.js";
import { widthsAt } from "./shape/widthsAt.js";

/** Both sides of a foot at one level. */
export interface SideWidths {
  /** Share of the length from the toe. */
  readonly fromToe: number;
  /** From the axis to the inner border; negative where the border has crossed the axis. */
  readonly medialWidth: number;
  /** From the axis to the outer border. */
  readonly lateralWidth: number;
  /** Outer less inner width, over the whole width. */
  readonly difference: number;
}

/** How unlike the two sides of a foot are. Areas and widths are in the unit of the points. */
export interface MedialLateralAsymmetry {
  /** Outer less inner area, over the whole: above 0 the outer side is larger. */
  readonly areaAsymmetry: number;
  readonly medialArea: number;
  readonly lateralArea: number;
  /** From toe to heel; a level at which the outline has no width is left out. */
  readonly curve: readonly SideWidths[];
  /** Toe to the middle between the heels. */
  readonly length: number;
  /** Says that an open outline was closed; null when it was not. */
  readonly note: string | null;
}

/**
 * Medial-lateral asymmetry of the ground surface about the axis from the toe to the middle between the heels.
 *
 * Method: the outline is cut along the axis; `areaAsymmetry` is (lateral - medial) / whole area. The curve gives both half widths at
 * levels along the axis, by default at every twentieth of the length from 0.05 to 0.95. The sign is outer less inner, so left and
 * right feet can be set side by side as they are. A sound foot is not the same on both sides: hold a foot against its own past or its
 * fellow, not against 0. The axis leans on three landmarks, so a toe landmark that is off by 1 % of the width moves the asymmetry by
 * about 1 %.
 *
 * Errors (`EstimateError`): those of `outlineMoments`; `out_of_range` for landmarks that do not fit each other or the outline, or
 * levels outside 0 to 1.
 *
 * Source: outer less inner is common practice, no source; areas by Green's theorem.
 */
export function medialLateralAsymmetry(
  points: Points,
  landmarks: FootLandmarks,
  options: OutlineOptions & { readonly levels?: readonly number[] } = {},
): MedialLateralAsymmetry {
  const levels = options.levels ?? Array.from({ length: 19 }, (_, k) => (k + 1) / 20);
  for (const level of levels) requireWithin("level", level, 0, 1);
  const ring = ringOf(points, options);
  const { along, across, length } = footFrame(ring, landmarks);
  const lateralArea = areaAbove(along, across);
  const medialArea = Math.max(0, Math.abs(ring.signedArea) - lateralArea);
  const sorted = Float64Array.from(levels).sort();
  const { least, greatest } = widthsAt(
    along,
    across,
    sorted.map((level) => level * length),
  );
  const curve: SideWidths[] = [];
  sorted.forEach((fromToe, k) => {
    const [medialWidth, lateralWidth] = [0 - least[k]!, greatest[k]!];
    const width = lateralWidth + medialWidth;
    if (width > 0) curve.push({ fromToe, medialWidth, lateralWidth, difference: (lateralWidth - medialWidth) / width });
  });
  const areaAsymmetry = (lateralArea - medialArea) / (lateralArea + medialArea);
  return { areaAsymmetry, medialArea, lateralArea, curve, length, note: ring.note };
}

/** Area of the part of an outline where `across` is above 0. */
function areaAbove(along: Float64Array, across: Float64Array): number {
  const n = along.length;
  let twice = 0;
  let [a, b] = [along[n - 1]!, across[n - 1]!];
  for (let i = 0; i < n; i += 1) {
    const nextA = along[i]!;
    const nextB = across[i]!;
    if (b > 0 && nextB > 0) twice += (nextA - a) * (b + nextB);
    else if (b > 0 !== nextB > 0) {
      const above = b > 0 ? b : nextB;
      twice += (nextA - a) * above * (above / Math.abs(nextB - b));
    }
    a = nextA;
    b = nextB;
  }
  return Math.abs(twice) / 2;
}
