import { expect } from "vitest";
import type { Answer, NotEnoughData } from "../../src/answer/Answer.js";

/** The answer, with what every answer must say; fails when there is none. */
export function answered(reply: Answer | NotEnoughData): Answer {
  if (reply.kind !== "answer") throw new Error(`${reply.id}: ${reply.reason}`);
  const { method, sentence, tables, charts } = reply;
  expect(method.unit).not.toBe("");
  expect(Number.isInteger(method.n) && method.n >= 0 && Number.isInteger(method.missing) && method.missing >= 0).toBe(true);
  expect(sentence).toMatch(/\.$/);
  expect(JSON.stringify([tables, charts, sentence])).not.toMatch(/NaN|undefined/);
  return reply;
}
