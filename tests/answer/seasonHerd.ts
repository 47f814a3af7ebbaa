import { simulateSeasonStudy } from "../../src/simulate/simulateSeasonStudy.js";
import type { SeasonDesign } from "../../src/simulate/SeasonDesign.js";
import type { Study } from "../../src/study/Study.js";
import { footVisit } from "../footVisit.js";
import { gaugeDay, horseStay, studyOf, yard } from "../study.js";
import { seasonDesign } from "../simulate/seasonDesign.js";

/** A simulated district as a study: rain raises the odds of thrush by exp(0.3) per 10 mm, season stands in the way. */
export function seasonHerd(changes: Partial<SeasonDesign> = {}, seed = 4): Study {
  const truth = { ...seasonDesign.truth, rainPer10Mm14d: 0.3 };
  const { rows, weather } = simulateSeasonStudy(
    { ...seasonDesign, yards: 11, horsesPerYard: 2, visitGapDays: 90, truth, ...changes },
    seed,
  );
  const gaugeOf = new Map(rows.map(({ yardId, gaugeId }) => [yardId, gaugeId]));
  const yardOf = new Map(rows.map(({ horseId, yardId }) => [horseId, yardId]));
  return studyOf({
    visits: rows.map(({ horseId, visitDate, foot, thrush, darkHorn }) =>
      footVisit({
        ...{ horseId, visitDate, foot, thrushGrade: thrush === null ? null : Number(thrush), examined: thrush !== null },
        ...{
          hornColour: darkHorn ? ("dark" as const) : ("light" as const),
          shoeState: foot.endsWith("F") ? ("tight" as const) : ("bare" as const),
          observerId: "K",
        },
      }),
    ),
    horses: [...yardOf].map(([horseId, yardId]) => horseStay({ horseId, yardId, species: "horse" })),
    yards: [...gaugeOf].map(([yardId, gaugeId]) => yard({ yardId, gaugeId, gaugeKm: 3 })),
    weather: weather.map((day) => gaugeDay(day)),
  });
}

/** Studies that are too small or too odd for an estimate of rain, each with what must be said. */
export function poorStudies(): readonly (readonly [string, Study, RegExp])[] {
  const study = seasonHerd();
  const regraded = (grade: number) => ({ ...study, visits: study.visits.map((row) => ({ ...row, thrushGrade: grade })) });
  const only = (names: readonly string[]) => ({
    ...study,
    visits: study.visits.filter(({ horseId }) => names.includes(horseId)),
  });
  const [first, second, third] = study.horses.map(({ horseId }) => horseId) as [string, string, string];
  return [
    ["one yard", seasonHerd({ yards: 1, horsesPerYard: 8 }), /1 yard/],
    ["three horses", only([first, second, third]), /3 horses have/],
    ["no weather", { ...study, weather: [] }, /no rain readings/],
    ["all cases", regraded(2), /All \d+ feet graded are cases/],
    ["no cases", regraded(0), /None of the \d+ feet graded is a case/],
    [
      "one season",
      { ...study, visits: study.visits.filter(({ visitDate }) => /-(06|07|08)-/.test(visitDate)) },
      /3 months of the year/,
    ],
    ["no grade", { ...study, visits: study.visits.map((row) => ({ ...row, thrushGrade: null })) }, /No frog is graded/],
  ];
}

/** A study in which it rains the same every day, so that nothing can be said of more rain against less. */
export function steadyRain(): readonly [string, Study, RegExp] {
  const study = seasonHerd();
  const weather = study.weather.map((day) => ({ ...day, rainMm: 2 }));
  return ["rain that never differs", { ...study, weather }, /has no estimate: .*is 2\.8 in every row used/];
}
