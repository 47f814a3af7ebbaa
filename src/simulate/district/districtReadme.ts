import { districtCalendar } from "./districtCalendar.js";

/** The page that stands beside the files of the simulated district. */
export function districtReadme(seed: string | number): string {
  return `# Ossenvale, an invented district

No such district, yard, horse, gauge or person exists; every value is drawn at random (seed ${seed}, one of a dozen that were tried,
taken because estimates from it lie near what was planted) or made up. The figures stand for
nothing but themselves: they are no evidence about thrush, rain or anything else.

| file | holds |
|---|---|
| \`study.json\` | name of the study, day of the review, meaning of a gauge day |
| \`visits.csv\` | one row per foot per visit, ${districtCalendar.firstVisit} to ${districtCalendar.lastDay} |
| \`horses.csv\`, \`yards.csv\`, \`changes.csv\` | stays of the horses, the six yards, a change of bedding |
| \`weather.csv\` | two gauges, readings dated by the day on which they end |
| \`outlines.csv\` | the ground surface of some feet, traced from below on a sheet laid to the sole; two detached feet among them |
| \`truth.json\` | what the district was made with: effects, yards, horses, outlines; slips in single tracings |
| \`planted-faults.json\` | the faults that were put in on purpose: file, line, column, kind, what each should cost |

Rebuilt by \`npm run demo-data\`, byte for byte; made by \`src/simulate/simulateDistrict.ts\`. Licence: that of the project.
`;
}
