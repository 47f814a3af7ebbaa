import { expect, test } from "vitest";
import { findingsForTheVet } from "../../src/answer/findingsForTheVet.js";
import { studyOf } from "../study.js";
import { oneHorse } from "./oneHorse.js";

const study = oneHorse();

test("every finding with its day and foot, newest first, those of the last visit in the sentence", () => {
  const answer = findingsForTheVet(study);
  expect(answer).toMatchObject({
    sentence:
      "The last visit, on 10 March 2025, has 4 findings that are the vet's: off hind, thrush grade 3, off hind, visit made because the horse was lame, off hind, thrush grade 3, after grade 2 at the visit before and off hind, thrush grade 3 at a visit for lameness. Earlier visits have 1.",
  });
  const rows = answer.kind === "answer" ? answer.tables[0]!.rows : [];
  expect(rows.map((row) => [row["date"], row["foot"], row["urgency"], row["vet"]])).toEqual([
    ["10 Mar 2025", "off hind", "now", "yes"],
    ["10 Mar 2025", "off hind", "now", "yes"],
    ["10 Mar 2025", "off hind", "soon", "yes"],
    ["10 Mar 2025", "off hind", "soon", "yes"],
    ["24 Feb 2025", "off hind", "soon", "not recorded"],
  ]);
});

test("a list that is cut says of how many", () => {
  const answer = findingsForTheVet(study, { most: 2 });
  expect(answer).toMatchObject({ tables: [{ caption: "Findings that are the vet's, newest first, the latest 2 of 5" }] });
});

test("without a finding it says so, never that the feet are sound", () => {
  const first = { ...study, visits: study.visits.slice(0, 3) };
  expect(findingsForTheVet(first)).toMatchObject({
    sentence: "No finding of the last visit, on 6 January 2025, is marked as the vet's. Nor is any of an earlier one.",
    tables: [],
    cautions: [expect.stringContaining("not thereby sound") as string],
  });
  expect(findingsForTheVet(studyOf())).toMatchObject({ kind: "not_enough_data" });
});

test("it names no diagnosis, dose, product or trim", () => {
  expect(JSON.stringify(findingsForTheVet(study))).not.toMatch(
    /laminitis|canker|infection|dose|antibiotic|apply|trim back|prognosis/i,
  );
});
