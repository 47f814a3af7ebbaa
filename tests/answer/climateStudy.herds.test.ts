import { expect, test } from "vitest";
import { climateStudy } from "../../src/answer/climateStudy.js";
import { prevalenceByLevel } from "../../src/answer/prevalenceByLevel.js";
import { thrushByMonth } from "../../src/answer/thrushByMonth.js";
import { thrushCases } from "../../src/derive/thrushCases.js";
import { fitMixedLogistic } from "../../src/estimate/fitMixedLogistic.js";
import { readStudy } from "../../src/read/readStudy.js";
import { expectNear, referenceRows } from "../estimate/reference.js";
import { mixedReference } from "../estimate/mixedReference.js";
import { folderWith, studyJson } from "../run/folders.js";
import { answered } from "./climateAnswer.js";

// A real herd disease through a study folder: contagious bovine pleuropneumonia in 15 herds over four quarters, data cbpp of R lme4 1.1-31. Each animal sampled becomes an
// animal with one foot, graded 1 when it was a case; a herd is a yard, a quarter its middle month.
function herdFolder(): string {
  const animals = referenceRows("cbpp.csv").flatMap(({ herd, period, size, incidence }) =>
    Array.from({ length: Number(size) }, (_, place) => ({
      id: `${String(herd)}-${String(period)}-${place}`,
      herd: `herd ${String(herd)}`,
      date: `2025-${String(3 * Number(period) - 1).padStart(2, "0")}-15`,
      grade: Number(place < Number(incidence)),
    })),
  );
  const file = (header: string, lines: readonly string[]) => `${[header, ...lines].join("\n")}\n`;
  return folderWith({
    "study.json": studyJson,
    "visits.csv": file(
      "visit_date,horse_id,foot,examined,thrush_grade",
      animals.map(({ id, date, grade }) => `${date},${id},LF,yes,${grade}`),
    ),
    "horses.csv": file(
      "horse_id,yard_id",
      animals.map(({ id, herd }) => `${id},${herd}`),
    ),
    "yards.csv": file("yard_id", [...new Set(animals.map(({ herd }) => herd))]),
  });
}

const herds = async () => readStudy(herdFolder());

test("every animal is read, none set aside", async () => {
  const study = await herds();
  const { footVisits, yards } = study.report.flow;
  expect([footVisits.read, footVisits.accepted, yards.accepted]).toEqual([842, 842, 15]);
});

test("period effects and spread of the herds by exact maximum likelihood", { timeout: 60_000 }, async () => {
  const study = await herds();
  const rows = thrushCases(study).map((row) => ({ ...row, quarter: Math.ceil(row.monthOfYear / 3) }));
  const fit = fitMixedLogistic({ rows, outcome: "thrush", terms: [{ column: "quarter", reference: 1 }], groups: ["yardId"] });
  // Single animals here, counts of a herd and quarter there: the same likelihood but for a constant.
  const wanted = (quantity: string) => [...mixedReference("cbpp exact")(quantity).values()];
  expectNear(
    fit.coefficients.map(({ estimate }) => estimate),
    wanted("estimate"),
    1e-5,
  );
  expectNear(
    fit.coefficients.map(({ se }) => se),
    wanted("se"),
    1e-5,
  );
  expectNear(
    fit.groups.map(({ sd }) => sd),
    wanted("sd"),
    1e-5,
  );
});

test("prevalence with herds as clusters, of all quarters and of the first", async () => {
  const study = await herds();
  // R 4.2.2, survey 4.1-1: svyciprop by logit, t with 14 degrees of freedom; design effect as Rao and Scott have it.
  const [looks] = answered(prevalenceByLevel(study)).tables[0]!.rows;
  expect([looks!["cases"], looks!["n"]]).toEqual([99, 842]);
  expectNear([looks!["estimate"], looks!["lower"], looks!["upper"]], [0.11757719715, 0.0762729201725, 0.176963989516], 1e-9);
  expectNear([looks!["designEffect"]], [4.34858973726], 1e-9);
  const months = answered(thrushByMonth(study)).charts[0]!.table.rows;
  const first = months.find((row) => String(row["month"]).includes("Feb"))!;
  expectNear([first["estimate"], first["lower"], first["upper"]], [0.219424460432, 0.132434909272, 0.341088397866], 1e-9);
});

test("the climate study says what these herds cannot carry: one quarter each, no rain", async () => {
  const replies = climateStudy(await herds(), { runs: 1 });
  const lacking = replies.filter((reply) => reply.kind === "not_enough_data");
  expect(lacking.find(({ id }) => id === "rain-effect")!.reason).toBe("There are no rain readings.");
  expect(lacking.find(({ id }) => id === "detectable-effect")!.reason).toMatch(/^Visits lie in 4 months of the year/);
  const description = replies.find(({ id }) => id === "study-description")!;
  expect(description.kind === "answer" && description.sentence).toMatch(/^12% \(95% interval 8% to 18%\)/);
});
