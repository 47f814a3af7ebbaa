import type { TracedOutline } from "../derive/TracedOutline.js";
import { EstimateError } from "./EstimateError.js";
import { frogToSoleArea } from "./frogToSoleArea.js";
import { medialLateralAsymmetry } from "./medialLateralAsymmetry.js";
import { outlineMoments } from "./outlineMoments.js";
import { toeTaper } from "./toeTaper.js";

/** One traced outline in numbers; a row for a rule or a mixed model. */
export interface OutlineDescription extends Pick<
  TracedOutline,
  "horseId" | "visitDate" | "foot" | "end" | "side" | "stage" | "tracing" | "observerId"
> {
  /** Horse and foot in one word. */
  readonly footId: string;
  /** Area within the bearing border of the wall. */
  readonly areaCm2: number;
  readonly perimeterMm: number;
  /** 4π area / perimeter². */
  readonly circularity: number;
  /** Ratio of the axes of the ellipse with the same second moments. */
  readonly aspect: number;
  /** Area over that of the convex hull. */
  readonly convexity: number;
  /** Greatest width over length. */
  readonly shapeIndex: number;
  /** Width at a quarter of the length from the toe, over greatest width. */
  readonly toeTaper: number;
  /** Where it is widest, as a share of the length from the toe. */
  readonly widestFromToe: number;
  /** Outer less inner area over the whole; null where inner and outer cannot be told. */
  readonly areaAsymmetry: number | null;
  /** Frog area over the area within the wall; null without a usable frog. */
  readonly frogToSole: number | null;
}

/** Outlines in numbers, and those that could not be used. */
export interface DescribedOutlines {
  readonly rows: readonly OutlineDescription[];
  readonly leftOut: readonly (Pick<TracedOutline, "horseId" | "visitDate" | "foot"> & { readonly reason: string })[];
}

/**
 * Size, form, toe taper, asymmetry and frog of every usable outline, in the order given.
 *
 * Method: `outlineMoments`, `toeTaper`, `medialLateralAsymmetry` and `frogToSoleArea` of each, with its landmarks; a wall traced from heel
 * to heel is closed there. Which side is outer is not asked of a specimen, nor of an outline that lies the other way round than most.
 *
 * Missing: an outline that is not usable, or that an estimator refuses, has no row but stands in `leftOut` with the reason.
 *
 * Source: as in the functions named.
 */
export function describedOutlines(outlines: readonly TracedOutline[]): DescribedOutlines {
  const rows: OutlineDescription[] = [];
  const leftOut: DescribedOutlines["leftOut"][number][] = [];
  for (const outline of outlines) {
    const { horseId, visitDate, foot } = outline;
    const found = described(outline);
    if (typeof found === "string") leftOut.push({ horseId, visitDate, foot, reason: found });
    else rows.push(found);
  }
  return { rows, leftOut };
}

/** The description, or why there is none. */
function described(outline: TracedOutline): OutlineDescription | string {
  const { wall, frog, landmarks, faults } = outline;
  const { horseId, visitDate, foot, end, side, stage, tracing, observerId } = outline;
  const fault = faults.find(({ severity, ring }) => severity === "unusable" && ring === "wall");
  if (fault !== undefined) return fault.message;
  if (!outline.usable || landmarks === null) return "The outline is not usable.";
  const sided = side !== null && faults.every(({ code }) => code !== "other_hand");
  try {
    const { area, perimeter, circularity, aspect, convexity } = outlineMoments(wall, { open: "close" });
    const { taper, shapeIndex, widestFromToe } = toeTaper(wall, landmarks, { open: "close" });
    return {
      ...{ horseId, visitDate, foot, end, side, stage, tracing, observerId, footId: `${horseId} ${foot}` },
      ...{ areaCm2: area / 100, perimeterMm: perimeter, circularity, aspect, convexity },
      ...{ shapeIndex, toeTaper: taper, widestFromToe },
      areaAsymmetry: sided ? medialLateralAsymmetry(wall, landmarks, { open: "close" }).areaAsymmetry : null,
      frogToSole: frog.length === 0 ? null : frogToSoleArea(wall, frog, { open: "close" }).ratio,
    };
  } catch (fault) {
    if (fault instanceof EstimateError) return fault.message;
    throw fault;
  }
}
