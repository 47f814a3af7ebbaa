import { defaultSettings } from "../../src/study/defaultSettings.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import type { Study } from "../../src/study/Study.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

const day = (visitDate: string, feet: Partial<Record<"LF" | "RF" | "LH" | "RH", Partial<FootVisit>>>) =>
  Object.entries(feet).map(([foot, cells]) =>
    footVisit({ horseId: "Bess", visitDate, foot: foot as FootVisit["foot"], ...cells }),
  );

/**
 * Three visits of one mare on 42 days, as of 1 April 2025, by hand. 6 January: all four graded 0, off hind 2. 24 February (49 days, kept):
 * off hind 2 again, so the vet's; off fore not looked at; near hind without a row. 10 March: lame call, off hind only, grade 3 and abscess.
 * Due 24 February + 42 = 7 April.
 */
export function oneHorse(): Study {
  return studyOf({
    settings: { ...defaultSettings, asOf: "2025-04-01" },
    visits: [
      ...day("2025-01-06", {
        LF: { thrushGrade: 0, stage: "before_trim", toeLengthMm: 82, toeAngleDeg: 50 },
        RF: { thrushGrade: 0, stage: "before_trim", toeLengthMm: 80 },
        LH: { thrushGrade: 0 },
        RH: { thrushGrade: 2, thrushSite: ["central_sulcus"] },
      }),
      ...day("2025-02-24", {
        LF: { thrushGrade: 0, stage: "before_trim", toeLengthMm: 86 },
        RF: { examined: false, notExaminedReason: "would not stand", thrushGrade: null },
        RH: {
          thrushGrade: 2,
          thrushSite: ["central_sulcus", "medial_groove"],
          crackSite: ["toe"],
          crackFrom: "ground",
          crackLengthMm: 12,
        },
      }),
      ...day("2025-03-10", { RH: { reason: "lame", thrushGrade: 3, abscess: true, vetInvolved: true } }),
    ],
    horses: [
      horseStay({
        horseId: "Bess",
        yardId: "Low",
        species: "horse",
        type: "cob",
        sex: "mare",
        birthYear: 2010,
        plannedIntervalDays: 42,
      }),
    ],
  });
}
