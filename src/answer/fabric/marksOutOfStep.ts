import { fabricIssue } from "./fabricIssue.js";
import { footDays } from "../../derive/footDays.js";
import { footSide } from "../../derive/footSide.js";
import { requiredDay } from "../../derive/requiredDay.js";
import type { FootVisit } from "../../study/FootVisit.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";

/** Fastest growth of the wall in mm a day: 15 mm a month is given for foals (lay source), 0.31 mm a day for mares (Kolstrung R et al. 2012, Med Weter 68:426). */
const FASTEST = 0.5;
/** Reading the hairline twice, mm. Common practice, no source. */
const READING_MM = 6;

/**
 * Abscess tracks that climbed, or went down faster than horn grows, on one foot from one visit to the next: the foot, the date or the distance
 * is wrong, or it is another track.
 *
 * Method: between two readings a track may not rise by more than 6 mm, nor fall by more than 0.5 mm a day and 6 mm. An abscess recorded after the
 * first reading may have left a new track, so that nothing is told then. Rings and cracks are left out: there are many, and a crack may climb.
 *
 * Missing: tracks without a distance are passed over.
 *
 * Source: a mark of the wall never moves up (common practice, no source); rate as above.
 */
export function marksOutOfStep({ visits }: Pick<Study, "visits">): Issue[] {
  const told = visits.filter((row) => footSide(row.foot) !== null && (row.abscess === true || isTrack(row)));
  return footDays(told).flatMap((history) => {
    const issues: Issue[] = [];
    let before: { readonly row: FootVisit; readonly mm: number } | null = null;
    for (const { rows } of history) {
      if (rows.some(({ abscess }) => abscess === true)) before = null;
      const row = rows.find(isTrack);
      if (row === undefined) continue;
      const mm = row.markBelowCoronetMm ?? 0;
      if (before !== null) issues.push(...outOfStep(before, { row, mm }));
      before = { row, mm };
    }
    return issues;
  });
}

function isTrack({ markKind, markBelowCoronetMm }: FootVisit): boolean {
  return markKind === "abscess_track" && markBelowCoronetMm !== null;
}

interface Sighting {
  readonly row: FootVisit;
  readonly mm: number;
}

function outOfStep(before: Sighting, now: Sighting): Issue[] {
  const days = requiredDay(now.row.visitDate) - requiredDay(before.row.visitDate);
  const moved = now.mm - before.mm;
  const most = FASTEST * days + READING_MM;
  if (moved >= -READING_MM && moved <= most) return [];
  return [
    fabricIssue({
      file: now.row.file,
      line: now.row.line,
      column: "mark_below_coronet_mm",
      code: "mark_out_of_step",
      found:
        `the abscess track of ${now.row.horseId} ${now.row.foot} lies ${now.mm} mm below the coronet, and lay at ${before.mm} mm ${days} days before ` +
        `(line ${before.row.line}); horn takes it down by ${Math.round(FASTEST * days)} mm in that time at most, and never up`,
      hint: "Check the foot, the date and the distance; if it is another track, record the abscess that left it.",
    }),
  ];
}
