import { focusOn } from "../../src/answer/focusOn.js";
import { seasonReview } from "../../src/answer/seasonReview.js";
import { duePage } from "../../src/show/duePage.js";
import { horsePage } from "../../src/show/horsePage.js";
import type { Page } from "../../src/show/Page.js";
import { reviewPage } from "../../src/show/reviewPage.js";
import { yardPage } from "../../src/show/yardPage.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import { grouped } from "../../src/study/grouped.js";
import type { Study } from "../../src/study/Study.js";
import { footVisit } from "../footVisit.js";
import { demoStudy } from "../simulate/demoStudy.js";
import { horseStay, studyOf, yard } from "../study.js";

const made = "2026-03-01";
const feet = ["LF", "RF", "LH", "RH"] as const;

/** How a page is to be printed, and how much of it is looked at: a large one is built like a smaller one, and axe goes through it on the desk only. */
type Kind = "one sheet" | "plain" | "large";

/** Every kind of page of every kind of study: full, empty, with one visit, without a finding for the vet, large, crammed. Made when asked for. */
export async function pagesOfStudies(): Promise<(readonly [name: string, page: () => Page, kind: Kind])[]> {
  const demo = await demoStudy();
  const horse = (study: Study, horseId: string) => horsePage(focusOn(study, { horseId }), horseId, made);
  const yardOf = (study: Study, yardId: string) => yardPage(focusOn(study, { yardId }), yardId, made);
  return [
    ["review of the demo", () => reviewPage(seasonReview(demo), made), "plain"],
    ["due list of the demo", () => duePage(focusOn(demo), made), "plain"],
    ["yard of the demo", () => yardOf(demo, "Oddley"), "plain"],
    ["busiest horse of the demo", () => horse(demo, busiest(demo)), "one sheet"],
    ["review of an empty study", () => reviewPage(seasonReview(studyOf()), made), "plain"],
    ["yard with one visit", () => yardOf(oneVisit(), "Low"), "plain"],
    ["horse with one visit", () => horse(oneVisit(), "Bess"), "one sheet"],
    ["horse without a finding for the vet", () => horse(manyHorses(1, 12), "Horse 1"), "one sheet"],
    ["horse with everything recorded", () => horse(crammed(), "Bess"), "one sheet"],
    ["due list of 300 horses", () => duePage(manyHorses(300, 2), made), "large"],
    ["yard of 300 horses", () => yardOf(manyHorses(300, 2), "Low"), "large"],
  ];
}

/** The horse of which most is written. */
function busiest(study: Study): string {
  const rows = [...grouped(study.visits, ({ horseId }) => horseId)].map(([horseId, own]) => ({ horseId, rows: own.length }));
  return rows.reduce((most, each) => (each.rows > most.rows ? each : most)).horseId;
}

function oneVisit(): Study {
  return studyOf({
    visits: [footVisit({ horseId: "Bess", thrushGrade: 1 })],
    horses: [horseStay({ horseId: "Bess", yardId: "Low" })],
    yards: [yard({ yardId: "Low" })],
  });
}

function manyHorses(horses: number, visits: number): Study {
  const names = Array.from({ length: horses }, (_, at) => `Horse ${at + 1}`);
  const date = (nth: number) => new Date(Date.UTC(2025, 0, 6 + 42 * nth)).toISOString().slice(0, 10);
  return studyOf({
    visits: names.flatMap((horseId, at) =>
      Array.from({ length: visits }, (_, nth) =>
        feet.map((foot) => footVisit({ horseId, visitDate: date(nth), foot, thrushGrade: (at + nth) % 2 })),
      ).flat(),
    ),
    horses: names.map((horseId) => horseStay({ horseId, yardId: "Low", plannedIntervalDays: 42 })),
    yards: [yard({ yardId: "Low" })],
  });
}

/** One horse with a long name, every cell filled on every foot at forty visits, all of it the vet's. */
function crammed(): Study {
  const full: Partial<FootVisit> = {
    thrushGrade: 3,
    thrushSite: ["central_sulcus", "medial_groove", "lateral_groove"],
    abscess: true,
    crackSite: ["toe", "quarter", "heel"],
    crackFrom: "coronet",
    crackLengthMm: 112.5,
    whiteLine: "separated",
    bars: "overgrown",
    flareSite: ["toe", "medial", "lateral"],
    markKind: "abscess_track",
    markBelowCoronetMm: 102.5,
    shoeState: "sprung",
    vetInvolved: false,
    ...{ hoofWidthMm: 127.5, hoofLengthMm: 131.5, toeLengthMm: 88.5, heelHeightMm: 41.5, toeAngleDeg: 49.5, heelAngleDeg: 42.5 },
    ...{ frogWidthMm: 51.5, frogLengthMm: 77.5 },
  };
  const visits = Array.from({ length: 40 }, (_, nth) =>
    feet.map((foot) =>
      footVisit({
        ...full,
        horseId: "Bess",
        visitDate: new Date(Date.UTC(2024, 0, 6 + 20 * nth)).toISOString().slice(0, 10),
        foot,
        reason: (["lame", "routine", "follow_up", "lost_shoe", "other"] as const)[nth % 5]!,
      }),
    ),
  );
  const type = "Warmblood crossed with an Irish draught, by the keeper's account";
  return studyOf({
    visits: visits.flat(),
    horses: [
      horseStay({
        ...{
          horseId: "Bess",
          yardId: "The lower yard at the old mill beyond the weir",
          joinedOn: "2024-01-01",
          type,
          sex: "mare",
          shod: "all",
        },
        ...{
          species: "horse",
          birthYear: 2010,
          birthYearEstimated: true,
          heightCm: 162,
          weightKg: 612,
          use: "riding school, four days a week",
          plannedIntervalDays: 42,
        },
      }),
    ],
  });
}
