import { expect, test } from "vitest";
import { yardsAndGround } from "../../src/answer/yardsAndGround.js";
import { twoYards } from "./twoYards.js";
import { herd, renamed, reversed } from "./herd.js";

// Looks with thrush by hand: North 25 of 36, South 4 of 36.
const study = twoYards([6, 5, 5, 4, 3, 2], [1, 1, 1, 1, 0, 0]);

test("yards stand by name with what was counted and a share drawn towards the mean", () => {
  const answer = yardsAndGround(study);
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.method).toMatchObject({ n: 72, missing: 0 });
  const rows = answer.tables[0]!.rows.map(({ group, horses, cases, n }) => [group, horses, cases, n]);
  expect(rows).toEqual([
    ["North", 6, 25, 36],
    ["South", 6, 4, 36],
  ]);
  const [north, south] = answer.tables[0]!.rows.map(({ estimate }) => estimate as number) as [number, number];
  expect(north).toBeLessThan(25 / 36);
  expect(south).toBeGreaterThan(4 / 36);
  expect(north).toBeGreaterThan(south);
  expect(answer.sentence).toMatch(
    /^Allowing for season and for front and hind feet, more thrush than the mean of \d+% of looks went with North, \d+% \(95% interval/,
  );
});

test("the funnel has one look a horse, at its last visit", () => {
  const answer = yardsAndGround(study);
  const [chart] = answer.kind === "answer" ? answer.charts : [];
  // On the last day looks 2 and 5 count: every horse of North has thrush at one of them, of South D2 alone.
  expect(chart!.table.rows.map(({ group, cases, n }) => [group, cases, n])).toEqual([
    ["North", 6, 6],
    ["South", 1, 6],
  ]);
});

test("ground of one yard alone gets no share, bedding of both does", () => {
  const answer = yardsAndGround(study);
  const [, ground] = answer.kind === "answer" ? answer.tables : [];
  expect(ground!.rows.map(({ kind, value, yards, cases, n, estimate }) => [kind, value, yards, cases, n, estimate])).toEqual([
    ["ground", "peat", 1, 25, 36, null],
    ["ground", "sand", 1, 4, 36, null],
    ["bedding", "straw", 2, 29, 72, expect.closeTo(29 / 72, 12)],
  ]);
  expect(ground!.greyed).toEqual([
    { row: 0, reason: "one yard alone has it" },
    { row: 1, reason: "one yard alone has it" },
  ]);
});

test("a small yard is greyed with the reason and never named in the sentence", () => {
  const small = { ...study, visits: study.visits.filter(({ horseId }) => horseId !== "A1" && horseId !== "A2") };
  const more = twoYards([0, 0, 0, 0, 0, 0], [1, 1, 1, 1, 0, 2]);
  const third = more.visits.filter(({ horseId }) => horseId < "B").map((visit) => ({ ...visit, horseId: `X${visit.horseId}` }));
  const horses = more.horses
    .filter(({ horseId }) => horseId < "B")
    .map((stay) => ({ ...stay, horseId: `X${stay.horseId}`, yardId: "West" }));
  const answer = yardsAndGround({ ...small, visits: [...small.visits, ...third], horses: [...small.horses, ...horses] });
  if (answer.kind !== "answer") throw new Error(answer.reason);
  expect(answer.tables[0]!.greyed).toEqual([{ row: 0, reason: "fewer than 5 horses" }]);
  expect(answer.sentence).not.toContain("North");
});

test("yards that differ by no more than chance are said not to differ", () => {
  const answer = yardsAndGround(twoYards([3, 2, 1, 3, 2, 1], [1, 2, 3, 1, 2, 3]));
  expect(answer.kind === "answer" && answer.sentence).toMatch(
    /^Yards differ in thrush by no more than chance would make them; all lie at the mean of \d+% of looks\.$/,
  );
  const rows = answer.kind === "answer" ? answer.tables[0]!.rows : [];
  expect(rows.map(({ lower, upper }) => [lower, upper])).toEqual(rows.map(() => [null, null]));
  expect(rows).toHaveLength(2);
});

test("row order and names of horses do not matter", () => {
  expect(yardsAndGround(reversed(study))).toEqual(yardsAndGround(study));
  const [one, other] = [yardsAndGround(study), yardsAndGround(renamed(study))];
  expect(other.kind === "answer" && other.sentence).toBe(one.kind === "answer" && one.sentence);
});

test("nothing, one large yard, and no thrush at all give no comparison", () => {
  expect(yardsAndGround(herd({}))).toMatchObject({
    reason: "No yard has 5 horses or more with a graded frog; a comparison needs two such yards.",
  });
  const one = { ...study, visits: study.visits.filter(({ horseId }) => horseId < "D3") };
  expect(yardsAndGround(one)).toMatchObject({
    reason: "One yard has 5 horses or more with a graded frog; a comparison needs two such yards.",
  });
  expect(yardsAndGround(twoYards([0, 0, 0, 0, 0, 0], [0, 0, 0, 0, 0, 0]))).toMatchObject({
    kind: "not_enough_data",
    reason: expect.stringMatching(/^Yards cannot be compared: /) as string,
  });
});
