import { readStudy } from "../../src/read/readStudy.js";
import type { Study } from "../../src/study/Study.js";

/** The demo study as read from its folder. */
export function demoStudy(): Promise<Study> {
  return readStudy(`${import.meta.dirname}/../../data-demo`, { today: "2026-03-01" });
}
