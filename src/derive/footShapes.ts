import type { Foot } from "../study/Foot.js";
import type { FootVisit } from "../study/FootVisit.js";
import { grouped } from "../study/grouped.js";
import type { HorseStay } from "../study/HorseStay.js";
import type { Study } from "../study/Study.js";
import { byVisit } from "./byVisit.js";
import { footEnd } from "./footEnd.js";
import { footSide } from "./footSide.js";
import { type HoofShape, hoofShape } from "./hoofShape.js";
import { type ShapeFlags, shapeFlags } from "./shapeFlags.js";
import { stayAt } from "./stayAt.js";

/** Measures, shape and flags of one foot at one visit and stage, with what is needed to group them. */
export interface FootShape extends HoofShape, ShapeFlags {
  readonly horseId: string;
  readonly yardId: string | null;
  readonly species: HorseStay["species"];
  readonly shod: HorseStay["shod"];
  readonly visitDate: string;
  readonly foot: Foot;
  readonly end: "fore" | "hind" | null;
  readonly side: "left" | "right" | null;
  /** Never pool over stages; null is a group of its own. */
  readonly stage: FootVisit["stage"];
  readonly hoofWidthMm: number | null;
  readonly hoofLengthMm: number | null;
  readonly toeLengthMm: number | null;
  readonly heelHeightMm: number | null;
  readonly toeAngleDeg: number | null;
}

/**
 * Shape of every foot at every visit and stage at which at least one index can be given, by day, horse and foot.
 *
 * Method: `hoofShape` and `shapeFlags` of each row, with yard, species and shoeing of the stay on that day (`stayAt`).
 *
 * Missing: a row without any index is left out; single indices may be null. Before and after a trim stay apart through `stage`.
 */
export function footShapes(study: Pick<Study, "visits" | "horses" | "settings">): FootShape[] {
  const stays = grouped(study.horses, (stay) => stay.horseId);
  const rows = study.visits.flatMap((visit): FootShape[] => {
    const shape = hoofShape(visit);
    if (Object.values(shape).every((index) => index === null)) return [];
    const { horseId, visitDate, foot, stage, hoofWidthMm, hoofLengthMm, toeLengthMm, heelHeightMm, toeAngleDeg } = visit;
    const stay = stayAt(stays.get(horseId) ?? [], horseId, visitDate);
    const { yardId = null, species = null, shod = null } = stay ?? {};
    return [
      {
        horseId,
        yardId,
        species,
        shod,
        visitDate,
        foot,
        end: footEnd(foot),
        side: footSide(foot),
        stage,
        ...{ hoofWidthMm, hoofLengthMm, toeLengthMm, heelHeightMm, toeAngleDeg },
        ...shape,
        ...shapeFlags(shape, species, study.settings),
      },
    ];
  });
  return rows.sort((a, b) => byVisit(a, b) || (a.foot < b.foot ? -1 : a.foot > b.foot ? 1 : 0));
}
