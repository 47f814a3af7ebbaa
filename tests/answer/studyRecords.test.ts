import { expect, test } from "vitest";
import { studyRecords } from "../../src/answer/studyRecords.js";
import { footVisit } from "../footVisit.js";
import { studyOf } from "../study.js";
import { answered } from "./climateAnswer.js";
import { seasonHerd } from "./seasonHerd.js";

test("what is lost at each step adds up, and reasons are counted", () => {
  const herd = seasonHerd({ unseenShare: 0.1 });
  const [lost, ...rest] = herd.horses;
  const study = { ...herd, horses: [{ ...lost!, yardId: null }, ...rest] };
  const { tables, charts, method } = answered(studyRecords(study));
  const steps = charts[0]!.table.rows;
  steps.slice(1).forEach((step, place) => {
    expect(Number(step["left"]) + Number(step["lost"])).toBe(steps[place]!["left"]);
  });
  const unseen = study.visits.filter(({ thrushGrade }) => thrushGrade === null).length;
  expect(steps.find((step) => step["step"] === "Graded")!["lost"]).toBe(unseen);
  expect(steps.find((step) => step["step"] === "Yard known")!["lost"]).toBe(
    study.visits.filter(({ horseId, thrushGrade }) => horseId === lost!.horseId && thrushGrade !== null).length,
  );
  expect(method.n + method.missing).toBe(study.visits.length);
  const linkage = tables.find(({ caption }) => caption.startsWith("Linkage"))!.rows;
  const visits = new Set(study.visits.map(({ horseId, visitDate }) => `${horseId} ${visitDate}`)).size;
  expect(linkage.reduce((sum, row) => sum + Number(row["visits"]), 0)).toBe(visits);
  expect(linkage.find((row) => row["linkage"] === "matched")!["medianKm"]).toBe(3);
});

test("one row is one row", () => {
  const { charts } = answered(
    studyRecords(studyOf({ visits: [footVisit({ horseId: "A", visitDate: "2025-01-06", foot: "LF" })] })),
  );
  expect(charts[0]!.title).toBe("Of 1 row read, no feet at visits are used");
});

test("without visits there is nothing to count", () => {
  expect(studyRecords(studyOf()).kind).toBe("not_enough_data");
});
