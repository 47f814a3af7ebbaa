import { expect, test } from "vitest";
import { clusteredSurvival } from "../../src/estimate/clusteredSurvival.js";
import { kaplanMeier } from "../../src/estimate/kaplanMeier.js";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";
import { survivalAt } from "../../src/estimate/survivalAt.js";
import { faultCode } from "./faultCode.js";
import { leukaemia } from "./leukaemia.js";
import { expectNear } from "./reference.js";

const rows = [
  ...leukaemia.maintained.map((row, place) => ({ ...row, horse: `m${place}`, first: true })),
  ...leukaemia.not.map((row, place) => ({ ...row, horse: `n${place}`, first: false })),
];
const options = { time: 20, clusterOf: ({ horse }: { horse: string }) => horse, random: seededRandom(1) };
const [maintained, not] = [rows.slice(0, 11), rows.slice(11)];

test("the share is that of the Kaplan-Meier curve, the difference that of two curves", () => {
  // R 4.2.2, survival 3.5-3, survfit on aml: 0.7159091 and 0.5833333 at 20 weeks.
  expectNear([clusteredSurvival(maintained, options).estimate], [0.7159091], 1e-6);
  const difference = clusteredSurvival(rows, { ...options, compare: ({ first }) => first });
  expectNear([difference.estimate], [0.7159091 - 0.58333333], 1e-6);
});

test("with clusters of one row the limits lie near Greenwood's", () => {
  // Greenwood 0.1423 at 20 weeks (R as above); the bootstrap error of 2000 resamples of 12 rows is taken to be within 15 %.
  const { se } = clusteredSurvival(not, options);
  expect(Math.abs(se! / 0.14231876 - 1)).toBeLessThan(0.15);
});

test("rows repeated within their cluster change nothing", () => {
  const twice = maintained.flatMap((row) => [row, row]);
  const [one, two] = [maintained, twice].map((of) => clusteredSurvival(of, { ...options, random: seededRandom(7) }));
  expectNear([two!.estimate, two!.lower, two!.upper], [one!.estimate!, one!.lower!, one!.upper!], 1e-12);
});

test("order of rows within a cluster, missing rows and rows not compared do not matter", () => {
  const twice = maintained.flatMap((row) => [row, { ...row, time: row.time! + 1 }]);
  const compare = ({ first }: { first: boolean | null }) => first;
  const expected = clusteredSurvival(twice, { ...options, random: seededRandom(3) });
  const swapped = twice.map((_, place) => twice[place ^ 1]!);
  expect(clusteredSurvival(swapped, { ...options, random: seededRandom(3) })).toEqual(expected);
  const more = [...twice, { ...twice[0]!, time: null }];
  expect(clusteredSurvival(more, { ...options, random: seededRandom(3) })).toEqual({ ...expected, missing: 1 });
  const others = [...rows, { ...rows[0]!, first: null }];
  expect(clusteredSurvival(others, { ...options, compare, random: seededRandom(3) })).toEqual({
    ...clusteredSurvival(rows, { ...options, compare, random: seededRandom(3) }),
    missing: 1,
  });
});

test("nothing watched so long has no value; the curve agrees with kaplanMeier at any time", () => {
  expect(clusteredSurvival(maintained, { ...options, time: 200 })).toMatchObject({ estimate: null, lower: null });
  expect(faultCode(() => clusteredSurvival(maintained, { ...options, time: -1 }))).toBe("out_of_range");
  for (const time of [5, 13, 30, 48]) {
    const wanted = survivalAt(kaplanMeier(maintained), maintained, time)!.estimate;
    expectNear([clusteredSurvival(maintained, { ...options, time }).estimate], [wanted], 1e-12);
  }
});
