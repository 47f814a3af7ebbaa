import type { RandomSource } from "../../estimate/numeric/RandomSource.js";
import { dayNumber } from "../../study/dayNumber.js";
import { grouped } from "../../study/grouped.js";
import { footOutline } from "./footOutline.js";
import type { HorseHistory } from "./horseHistory.js";
import { plantedOutlines } from "./plantedOutlines.js";
import { rounded } from "./rounded.js";
import { specimenRows } from "./specimenRows.js";
import type { TextLine } from "./TextLine.js";
import { tracedLines } from "./tracedLines.js";
import type { TracedFoot } from "./TracedFoot.js";

/** One outline as it is. */
export interface TrueOutline {
  readonly horseId: string;
  readonly visitDate: string;
  readonly foot: string;
  readonly roundness: number;
  readonly bulge: number;
}

/** Lines of outlines.csv and what they were made with. */
export interface DistrictOutlines {
  readonly lines: TextLine[];
  readonly truth: readonly TrueOutline[];
}

const HORSES_A_YARD = 4;
const DAYS_APART = 150;

/**
 * Outlines traced at the first four horses of each yard that were measured, on the day of their first measures, and at every other one
 * once more half a year on; one horse a yard was traced twice on its first day, by the same observer in three yards and by both in the others.
 * And the two specimens, whose inner and outer heel are only guessed.
 */
export function districtOutlines(histories: readonly HorseHistory[], random: RandomSource): DistrictOutlines {
  const lines: TextLine[] = [];
  const truth: TrueOutline[] = [];
  const yards = [...grouped(histories, ({ horse }) => horse.yardId).values()];
  yards.forEach((yard, yardPlace) => {
    const measured = yard.filter(({ traced }) => traced.length > 0).slice(0, HORSES_A_YARD);
    measured.forEach(({ horse, traced }, place) => {
      const of = random.stream(horse.horseId);
      const horseOff = of.normal(0, plantedOutlines.horseSd);
      const feet = new Map(["LF", "RF", "LH", "RH"].map((foot) => [foot, of.normal(horseOff, plantedOutlines.footSd)]));
      const first = traced[0]!;
      const later = traced.find(({ visitDate }) => dayNumber(visitDate)! - dayNumber(first.visitDate)! >= DAYS_APART);
      const visits = place % 2 === 0 && later !== undefined ? [first, later] : [first];
      for (const visit of visits) {
        const again = place === 1 ? (yardPlace % 2 === 0 ? visit.observerId : visit.observerId === "K" ? "M" : "K") : null;
        for (const foot of visit.feet) {
          const form = formOf(foot, feet.get(foot.foot) ?? 0, of.stream(`${visit.visitDate} ${foot.foot}`));
          const { horseId } = horse;
          const cells = { horse_id: horseId, visit_date: visit.visitDate, foot: foot.foot, stage: foot.stage };
          const outline = footOutline(form);
          const right = foot.foot === "RF" || foot.foot === "RH";
          const trace = (tracing: string, observer: string) =>
            tracedLines(
              outline,
              { ...cells, tracing, observer_id: observer },
              right,
              of.stream(`trace ${visit.visitDate} ${foot.foot} ${tracing}`),
            );
          lines.push(...trace(again === null ? "" : "1", visit.observerId));
          if (again !== null) lines.push(...trace("2", again));
          truth.push({ horseId, visitDate: visit.visitDate, foot: foot.foot, roundness: form.roundness, bulge: form.bulge });
        }
      }
    });
  });
  const specimens = tracedSpecimens(random.stream("specimens"));
  return { lines: [...lines, ...specimens.lines], truth: [...truth, ...specimens.truth] };
}

function formOf({ hind, measures, flares }: TracedFoot, off: number, random: RandomSource): Parameters<typeof footOutline>[0] {
  const { foreRoundness, hindRoundness, outerBulge, flareBulge, bulgeSd } = plantedOutlines;
  const flare = (flares.includes("lateral") ? flareBulge : 0) - (flares.includes("medial") ? flareBulge : 0);
  return {
    hind,
    measures,
    roundness: rounded((hind ? hindRoundness : foreRoundness) + off, 3),
    bulge: rounded(outerBulge + flare + random.normal(0, bulgeSd), 4),
  };
}

function tracedSpecimens(random: RandomSource): DistrictOutlines {
  const specimens = specimenRows().map(({ horseId, visitDate, cells }) => {
    const hind = cells.foot === "H";
    const [width, length, frogWidth, frogLength] = [
      cells.hoof_width_mm,
      cells.hoof_length_mm,
      cells.frog_width_mm,
      cells.frog_length_mm,
    ].map(Number);
    const form = {
      hind,
      measures: { hoofWidthMm: width!, hoofLengthMm: length!, frogWidthMm: frogWidth!, frogLengthMm: frogLength! },
      roundness: hind ? plantedOutlines.hindRoundness : plantedOutlines.foreRoundness,
      bulge: plantedOutlines.outerBulge,
    };
    const foot = String(cells.foot);
    const shared = { horse_id: horseId, visit_date: visitDate, foot, stage: "single", tracing: "", observer_id: "K" };
    return {
      lines: tracedLines(footOutline(form), shared, false, random.stream(horseId)),
      truth: { horseId, visitDate, foot, roundness: form.roundness, bulge: form.bulge },
    };
  });
  return { lines: specimens.flatMap(({ lines }) => lines), truth: specimens.map(({ truth }) => truth) };
}
