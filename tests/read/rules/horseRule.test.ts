import { expect, test } from "vitest";
import { faults, studyFrom } from "../folder.js";

const header = "horse_id,yard_id,species,birth_year,joined_on,left_on";
const visits = { "visits.csv": "visit_date,horse_id,foot\n" };

async function read(...rows: readonly string[]) {
  const study = await studyFrom({
    ...visits,
    "yards.csv": "yard_id\nNorth\nSouth\n",
    "horses.csv": [header, ...rows].join("\n"),
  });
  return {
    horses: study.horses,
    issues: study.report.issues,
    said: faults(study)
      .filter((fault) => fault.startsWith("horses"))
      .map((fault) => fault.replace("horses.csv:", "")),
  };
}

test("a horse that moves yard has one row per stay, and may move within a day", async () => {
  const { horses, said } = await read(
    "Ash,North,horse,2012,2024-01-01,2024-06-01",
    "Ash,South,horse,2012,2024-06-01,",
    "Birch,North,donkey,,,",
  );
  expect(horses.map(({ horseId, yardId, species }) => [horseId, yardId, species])).toEqual([
    ["Ash", "North", "horse"],
    ["Ash", "South", "horse"],
    ["Birch", "North", "donkey"],
  ]);
  expect(said).toEqual([]);
});

test("the same stay again is set aside, stays that overlap are kept with a warning", async () => {
  const { horses, said, issues } = await read(
    "Ash,North,,,2024-01-01,",
    "Ash,South,,,2024-01-01,",
    "Ash,South,,,2024-05-01,",
    "Birch,North,,,,",
    "Birch,South,,,,",
  );
  expect(horses.map(({ line }) => line)).toEqual([2, 4, 5]);
  expect(said).toEqual(["3 - duplicate_row set_aside", "4 - overlapping_stays warning", "6 - duplicate_row set_aside"]);
  expect(issues.find(({ code }) => code === "overlapping_stays")?.message).toContain("stay in line 2");
});

test("an animal that is no equid is set aside; no species is taken as horse and said nowhere", async () => {
  const { horses, said } = await read("Daisy,North,cow,,,", "Ash,North,,,,", "Jenny,North,Donkey,,,");
  expect(horses.map(({ horseId, species }) => [horseId, species])).toEqual([
    ["Ash", null],
    ["Jenny", "donkey"],
  ]);
  expect(said).toEqual(["2 species not_equine set_aside"]);
});

test("dates and years that cannot be are blanked, the row kept", async () => {
  const { horses, said } = await read("Ash,North,,2026,2024-05-01,2024-04-01");
  expect(horses).toMatchObject([{ birthYear: null, joinedOn: "2024-05-01", leftOn: null }]);
  expect(said).toEqual(["2 left_on left_before_joined cell_blanked", "2 birth_year birth_year_in_future cell_blanked"]);
});

test("a yard that yards.csv does not hold is a warning, with the name that was perhaps meant", async () => {
  const { horses, issues } = await read("Ash,Nroth,,,,");
  expect(horses).toHaveLength(1);
  expect(issues.find(({ code }) => code === "unknown_yard")).toMatchObject({
    severity: "warning",
    column: "yard_id",
    hint: expect.stringContaining('"North"') as string,
  });
});
