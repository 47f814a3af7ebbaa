import { expect, test } from "vitest";
import { forTheVet } from "../../src/answer/forTheVet.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

const visits = [
  footVisit({ horseId: "Bramble", visitDate: "2025-01-06", thrushGrade: 3 }),
  footVisit({ horseId: "Bramble", visitDate: "2025-02-17", thrushGrade: 0 }),
  footVisit({ horseId: "Kestrel", visitDate: "2025-02-17", foot: "RH", crackFrom: "coronet", vetInvolved: false }),
];
const study = studyOf({ visits, horses: [horseStay({ horseId: "Kestrel", yardId: "North" })] });

test("what was found at a horse's last visit stands first; older findings are counted", () => {
  const answer = forTheVet(study);
  expect(answer).toMatchObject({
    sentence:
      "At their last visit 1 horse had a finding recorded that is the vet's: Kestrel. 1 such finding was recorded at earlier visits.",
  });
  expect(answer.kind === "answer" && answer.tables[0]!.rows).toEqual([
    {
      urgency: "now",
      horse: "Kestrel",
      yard: "North",
      foot: "off hind",
      date: "17 Feb 2025",
      recorded: "crack starting at the coronet",
      vet: "no",
    },
  ]);
});

test("nothing recorded is not called sound", () => {
  const answer = forTheVet(studyOf({ visits: [footVisit({ thrushGrade: 0 })] }));
  expect(answer).toMatchObject({
    sentence: "No finding of a horse's last visit is marked as the vet's. No such findings were recorded at earlier visits.",
  });
  expect(answer.kind === "answer" && answer.cautions.join(" ")).toContain("not thereby sound");
  expect(forTheVet(studyOf())).toMatchObject({ kind: "not_enough_data" });
});

test("row order does not matter", () => {
  expect(forTheVet({ ...study, visits: [...visits].reverse() })).toEqual(forTheVet(study));
});
