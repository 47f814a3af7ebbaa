import { expect, test } from "vitest";
import { questions } from "../../src/answer/questions.js";
import { readStudy } from "../../src/read/readStudy.js";
import { studyOf } from "../study.js";
import { herd, reversed } from "./herd.js";

const one = herd({ A: [["2025-01-01", 1, 0]] });
const focusOf = (needs: string | null) => (needs === "horse" ? { horseId: "A" } : {});

test("short names are the field's words, each used once, with a question each", () => {
  expect(new Set(questions.map(({ id }) => id)).size).toBe(questions.length);
  for (const { id, question } of questions) {
    expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
    expect(question).toMatch(/^[A-Z].*\?$/);
  }
});

// What is declared needs no data, so it is left out.
test.each(questions.filter(({ id }) => id !== "study-declaration").map((each) => [each.id, each] as const))(
  "%s: an empty study is not enough, said in a sentence",
  (id, each) => {
    if (each.needs === "horse") {
      expect(() => each.ask(studyOf(), { horseId: "A" })).toThrow("no horse A");
      return;
    }
    expect(each.ask(studyOf())).toMatchObject({
      ...{ kind: "not_enough_data", id, question: each.question },
      reason: expect.stringMatching(/^[A-Z0-9].*\.$/s) as string,
    });
  },
);

test.each(questions.map((each) => [each.id, each] as const))(
  "%s: one horse seen once gives no number that claims more",
  (_, each) => {
    const reply = each.ask(one, focusOf(each.needs));
    expect(JSON.stringify(reply)).not.toMatch(/NaN|Infinity|undefined/);
  },
);

test.each(questions.map((each) => [each.id, each] as const))(
  "%s: an answer to the demo says unit, n, missing and method, in sentences; the order of rows does not matter",
  { timeout: 180_000 },
  async (_, each) => {
    const study = await demo();
    const focus = each.needs === "horse" ? { horseId: study.horses[0]!.horseId } : {};
    const answer = each.ask(study, focus);
    expect(answer).toMatchObject({ kind: "answer", id: each.id, question: each.question });
    if (answer.kind !== "answer") return;
    expect(answer.sentence).toMatch(/^[A-Z0-9].*\.$/s);
    expect(answer.sentence).not.toMatch(/NaN|null|undefined|\bcaus/i);
    expect(answer.method.unit).not.toBe("");
    expect(answer.method.n).toBeGreaterThan(0);
    expect(answer.method.missing).toBeGreaterThanOrEqual(0);
    expect(answer.method.text).toMatch(/^[A-Z].*\.$/s);
    // Sums in another order may differ in the last digits.
    const digits = (_: string, value: unknown) => (typeof value === "number" ? Number(value.toPrecision(9)) : value);
    expect(JSON.stringify(each.ask(reversed(study), focus), digits)).toBe(JSON.stringify(answer, digits));
  },
);

let read: ReturnType<typeof readStudy> | null = null;
function demo(): ReturnType<typeof readStudy> {
  return (read ??= readStudy("data-demo"));
}
