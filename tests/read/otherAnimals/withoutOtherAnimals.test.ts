import { expect, test } from "vitest";
import { studyFrom } from "../folder.js";

const header = "visit_date,horse_id,foot,thrush_grade,hoof_width_mm,hoof_length_mm,toe_length_mm,note";
const feet = ["LF", "RF", "LH", "RH"];
const horse = (name: string, day: string) => feet.map((foot) => `${day},${name},${foot},0,120,125,80,`);
const cow = (name: string, day: string) =>
  feet.flatMap((foot) => ["inner", "outer"].map((claw) => `${day},${name},${foot},,60,100,75,${claw} claw`));
const files = {
  "visits.csv": [header, ...horse("Rowan", "2025-01-06"), ...cow("Daisy", "2025-01-06"), ...horse("Sorrel", "2025-01-07")].join(
    "\n",
  ),
  "horses.csv": ["horse_id,yard_id,type", "Rowan,Top,cob", "Daisy,Low,", "Sorrel,Top,hack"].join("\n"),
  "yards.csv": ["yard_id,name", "Top,", "Low,"].join("\n"),
  "outlines.csv": [
    "horse_id,visit_date,foot,ring,point,x_mm,y_mm",
    "Daisy,2025-01-06,LF,wall,1,0,0",
    "Rowan,2025-01-06,LF,wall,1,0,0",
  ].join("\n"),
};

test("rows of claws are set aside with the reason, and the flow of records still adds up at every level", async () => {
  const { visits, horses, outlines, report } = await studyFrom(files);
  expect(new Set(visits.map(({ horseId }) => horseId))).toEqual(new Set(["Rowan", "Sorrel"]));
  expect(horses.map(({ horseId }) => horseId)).toEqual(["Rowan", "Sorrel"]);
  expect(outlines.map(({ horseId }) => horseId)).toEqual(["Rowan"]);
  // Eight rows of a cow: four repeats of a foot, four set aside by their signs.
  expect(report.flow).toEqual({
    footVisits: { read: 16, accepted: 8, setAside: 8 },
    visits: { read: 3, accepted: 2, setAside: 1 },
    horses: { read: 3, accepted: 2, setAside: 1 },
    yards: { read: 2, accepted: 1, setAside: 1 },
  });
  const input = (file: string) => report.inputs.find((each) => each.file === file);
  expect(input("visits.csv")).toMatchObject({ rowsRead: 16, accepted: 8, setAside: 8 });
  expect(input("horses.csv")).toMatchObject({ rowsRead: 3, accepted: 2, setAside: 1 });
  expect(input("outlines.csv")).toMatchObject({ rowsRead: 2, accepted: 1, setAside: 1 });
  const told = report.issues.filter(({ code }) => code === "not_equine_by_signs");
  expect(told.map(({ file, line, severity }) => [file, line, severity])).toEqual([
    ["visits.csv", 6, "set_aside"],
    ["visits.csv", 8, "set_aside"],
    ["visits.csv", 10, "set_aside"],
    ["visits.csv", 12, "set_aside"],
    ["horses.csv", 3, "set_aside"],
    ["outlines.csv", 2, "set_aside"],
  ]);
  expect(told[0]?.message).toBe(
    'visits.csv, line 6: "Daisy" on 2025-01-06 does not look like a horse: 8 rows of one day where a horse has four feet; ' +
      'the note says "claw"; width over length is 0.60, below 0.65; the walls of 4 feet are measured and no frog is ever mentioned.',
  );
  expect(report.counts.filter(({ code }) => code === "not_equine_by_signs").map(({ file, count }) => [file, count])).toEqual([
    ["visits.csv", 4],
    ["horses.csv", 1],
    ["outlines.csv", 1],
  ]);
});

test("an animal with another day that may be a horse's keeps that day and its row in horses.csv", async () => {
  const other = horse("Daisy", "2024-11-06");
  const { visits, horses, report } = await studyFrom({ ...files, "visits.csv": `${files["visits.csv"]}\n${other.join("\n")}` });
  expect(visits.filter(({ horseId }) => horseId === "Daisy").map(({ visitDate }) => visitDate)).toEqual(
    Array(4).fill("2024-11-06"),
  );
  expect(horses).toHaveLength(3);
  expect(report.flow.visits).toEqual({ read: 4, accepted: 3, setAside: 1 });
  expect(report.flow.horses).toEqual({ read: 3, accepted: 3, setAside: 0 });
});

test("a horse with one such sign is kept as it is", async () => {
  const noted = horse("Rowan", "2025-01-06").map((row) => `${row}stood on by a cow`);
  const { visits, report } = await studyFrom({ "visits.csv": [header, ...noted].join("\n") });
  expect(visits).toHaveLength(4);
  expect(report.flow.footVisits.setAside).toBe(0);
});
