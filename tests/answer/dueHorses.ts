import { defaultSettings } from "../../src/study/defaultSettings.js";
import type { Study } from "../../src/study/Study.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

/**
 * Horses on 42 days as of 1 March 2025, by hand: Ash due 17 February (12 over), Briar 23 February (6 past), Cob 1 March (that day),
 * Dun 3 March (2), Elm 10 March (9), Fern 30 March (29); Gale seen without a plan, Hazel not seen yet, Ivy gone.
 */
export function dueHorses(): Study {
  const seen = {
    Ash: "2025-01-06",
    Briar: "2025-01-12",
    Cob: "2025-01-18",
    Dun: "2025-01-20",
    Elm: "2025-01-27",
    Fern: "2025-02-16",
    Gale: "2025-02-01",
    Ivy: "2025-01-06",
  };
  return studyOf({
    settings: { ...defaultSettings, asOf: "2025-03-01" },
    visits: Object.entries(seen).map(([horseId, visitDate]) => footVisit({ horseId, visitDate })),
    horses: [...Object.keys(seen), "Hazel"].map((horseId) =>
      horseStay({
        horseId,
        yardId: horseId < "D" ? "Low" : "High",
        plannedIntervalDays: horseId === "Gale" ? null : 42,
        leftOn: horseId === "Ivy" ? "2025-02-01" : null,
      }),
    ),
  });
}
