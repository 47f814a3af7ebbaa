import { expect, test } from "vitest";
import { askFolder } from "../../src/run/askFolder.js";
import { questions } from "../../src/answer/questions.js";
import { folderWith, heard, studyJson } from "./folders.js";

const visits = "visit_date,horse_id,foot,next_interval_days\n2025-01-06,Bess,LF,42\n2025-01-20,Clover,LF,42\n";
const studyFolder = () => folderWith({ "study.json": studyJson, "visits.csv": visits });

test("without a question it lists what can be answered, and what is lacking for the rest", async () => {
  const terminal = heard();
  expect(await askFolder(studyFolder(), undefined, {}, terminal)).toBe(0);
  const text = terminal.text();
  for (const { id } of questions) expect(text).toContain(`  ${id}\n`);
  expect(text).toMatch(/^\d+ of \d+ questions can be answered/);
  // No frog was graded, so there is no share; two horses have an agreed interval, so there is a list.
  expect(text).toMatch(/-\s+thrush-now\n\s+What share[^?]+\?\n\s+Not enough data: /);
  expect(text).toMatch(/\n {4}due-and-over\n/);
  for (const line of text.split("\n").slice(1, -3)) expect(line.length).toBeLessThanOrEqual(80);
});

test("one question, as of a day, of one horse", async () => {
  const terminal = heard();
  await askFolder(studyFolder(), "due-and-over", { asOf: "2025-03-01", horse: "Bess" }, terminal);
  // 6 January and 42 days is 17 February: 12 days over on 1 March.
  expect(terminal.text()).toContain("Bess");
  expect(terminal.text()).toContain("12");
  expect(terminal.text()).not.toContain("Clover");
});

test("for machines: the answer, or the list, as JSON", async () => {
  const [answer, list] = [heard(), heard()];
  await askFolder(studyFolder(), "thrush-now", { json: true }, answer);
  expect(JSON.parse(answer.text())).toMatchObject({ kind: "not_enough_data", id: "thrush-now" });
  await askFolder(studyFolder(), undefined, { json: true }, list);
  const states = JSON.parse(list.text()) as { id: string; canAnswer: boolean; lacks: string | null }[];
  expect(states.map(({ id }) => id)).toEqual(questions.map(({ id }) => id));
  expect(states.find(({ id }) => id === "thrush-now")).toMatchObject({ canAnswer: false });
});

test("unknown names are refused with the nearest one; a question of one horse asks for it", async () => {
  const folder = studyFolder();
  const fault = (name: string, options = {}) => expect(askFolder(folder, name, options, heard())).rejects;
  await fault("thrush-nwo").toMatchObject({
    code: "unknown_question",
    hint: expect.stringContaining("Did you mean thrush-now?") as string,
  });
  await fault("horse-history").toMatchObject({ code: "horse_needed", hint: expect.stringContaining("--horse") as string });
  await fault("thrush-now", { horse: "Bes" }).toMatchObject({ code: "unknown_horse", hint: "Did you mean Bess?" });
  await fault("thrush-now", { yard: "North" }).toMatchObject({ code: "unknown_yard" });
});
