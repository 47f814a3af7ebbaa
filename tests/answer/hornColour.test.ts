import { expect, test } from "vitest";
import { hornColour } from "../../src/answer/hornColour.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";
import { answered } from "./climateAnswer.js";
import { seasonHerd } from "./seasonHerd.js";

test("pairs by hand: light a case in six horses and dark in two: 6 / 2 = 3", () => {
  const names = ["A", "B", "C", "D", "E", "F", "G", "H", "I"];
  const visits = names.flatMap((horseId, place) => [
    footVisit({ horseId, foot: "LF", hornColour: "light", thrushGrade: place < 6 ? 1 : 0, examined: true }),
    footVisit({ horseId, foot: "RF", hornColour: "dark", thrushGrade: place === 6 || place === 7 ? 1 : 0, examined: true }),
    footVisit({ horseId, foot: "LH", hornColour: "striped", thrushGrade: 0, examined: true }),
    // Hind feet of both colours, alike, so that hind or front can be held equal.
    footVisit({ horseId, visitDate: "2025-03-01", foot: "LH", hornColour: "light", thrushGrade: place % 2, examined: true }),
    footVisit({
      horseId,
      visitDate: "2025-03-01",
      foot: "LF",
      hornColour: "light",
      thrushGrade: 1 - (place % 2),
      examined: true,
    }),
  ]);
  const { tables, method } = answered(
    hornColour(studyOf({ visits, horses: names.map((horseId) => horseStay({ horseId, yardId: "Y" })) })),
  );
  expect(Number(tables[0]!.rows[0]!["estimate"])).toBeCloseTo(3, 6);
  expect(method.missing).toBe(9);
});

test("a colour drawn without regard to thrush: the interval holds 1", () => {
  const { tables } = answered(hornColour(seasonHerd()));
  expect(Number(tables[0]!.rows[0]!["lower"]) < 1 && 1 < Number(tables[0]!.rows[0]!["upper"])).toBe(true);
});

test("horses of one colour cannot be compared within", () => {
  const study = seasonHerd();
  const reply = hornColour({ ...study, visits: study.visits.map((row) => ({ ...row, hornColour: "dark" as const })) });
  expect(reply.kind === "not_enough_data" && reply.reason).toMatch(/^No horses have both/);
});
