import { seededRandom } from "../../../src/estimate/numeric/seededRandom.js";
import { dateOfDay } from "../../../src/study/dateOfDay.js";
import type { FootVisit } from "../../../src/study/FootVisit.js";
import type { Study } from "../../../src/study/Study.js";
import { footVisit } from "../../footVisit.js";
import { horseStay, studyOf, yard } from "../../study.js";

const usual = {
  hoofWidthMm: [125, 8],
  hoofLengthMm: [128, 8],
  toeLengthMm: [82, 5],
  heelHeightMm: [40, 4],
  toeAngleDeg: [52, 2.5],
  heelAngleDeg: [48, 3],
  frogWidthMm: [55, 5],
  frogLengthMm: [85, 6],
  medialWallAngleDeg: [84, 2],
  lateralWallAngleDeg: [79, 2],
} as const;
const fields = Object.keys(usual) as (keyof typeof usual)[];

/**
 * A herd whose feet are measured: horses in two yards, seen on the same days every six weeks by observers A and B in turn. Fore feet are wider
 * than hind feet by 8 mm, left and right differ by a few, and readings repeat with 1 mm or degree. The same numbers every time.
 */
export function measuredHerd({ horses = 16, visits = 6 }: { readonly horses?: number; readonly visits?: number } = {}): Study {
  const random = seededRandom("measured herd");
  const rows: FootVisit[] = [];
  const names = Array.from({ length: horses }, (_, place) => `Horse ${String(place)}`);
  for (const horseId of names) {
    const own = new Map(fields.map((field) => [field, random.normal(0, usual[field][1])]));
    for (const foot of ["LF", "RF", "LH", "RH"] as const) {
      const fore = foot.endsWith("F") ? 4 : -4;
      const truth = new Map(
        fields.map((field) => {
          const width = field === "hoofWidthMm" ? fore : 0;
          return [field, usual[field][0] + (own.get(field) ?? 0) + width + random.normal(0, usual[field][1] / 2)];
        }),
      );
      for (let visit = 0; visit < visits; visit++) {
        const read = fields.map((field) => [field, Math.round((truth.get(field) ?? 0) + random.normal())] as const);
        rows.push(
          footVisit({
            ...Object.fromEntries(read),
            horseId,
            foot,
            visitDate: dateOfDay(20_000 + 42 * visit),
            stage: "single",
            observerId: visit % 2 === 0 ? "A" : "B",
            thrushGrade: random.bernoulli(0.3) ? 1 : 0,
            line: rows.length + 2,
          }),
        );
      }
    }
  }
  return studyOf({
    visits: rows,
    horses: names.map((horseId, place) => horseStay({ horseId, yardId: place % 2 === 0 ? "Top" : "Low", line: place + 2 })),
    yards: [yard({ yardId: "Top", gaugeId: "G" }), yard({ yardId: "Low", gaugeId: "G" })],
  });
}
