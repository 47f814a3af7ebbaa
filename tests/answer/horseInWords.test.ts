import { expect, test } from "vitest";
import { horseInWords } from "../../src/answer/horseInWords.js";
import { horseStay, studyOf } from "../study.js";
import { oneHorse } from "./oneHorse.js";

test("who it is and where it stands", () => {
  expect(horseInWords(oneHorse(), "Bess")).toBe("Horse, cob, mare, born 2010. At Low.");
});

test("the yard of the day, with the day it came; an estimated year is said to be one", () => {
  const study = oneHorse();
  const horses = [
    horseStay({ horseId: "Bess", yardId: "Low", leftOn: "2025-03-01" }),
    horseStay({
      horseId: "Bess",
      yardId: "High",
      joinedOn: "2025-03-01",
      birthYear: 2012,
      birthYearEstimated: true,
      shod: "fronts",
    }),
  ];
  expect(horseInWords({ ...study, horses }, "Bess")).toBe(
    "Born 2012 (estimated), usually shod in front. At High since 1 March 2025.",
  );
});

test("one that left, and one of which nothing is known", () => {
  const study = oneHorse();
  const horses = [horseStay({ horseId: "Bess", yardId: "Low", type: "cob", leftOn: "2025-03-20" })];
  expect(horseInWords({ ...study, horses }, "Bess")).toBe("Cob. Left on 20 March 2025.");
  expect(horseInWords(studyOf(), "Bess")).toBe("Nothing but its visits has been recorded of this horse.");
});
