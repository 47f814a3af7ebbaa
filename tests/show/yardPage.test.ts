import { expect, test } from "vitest";
import { focusOn } from "../../src/answer/focusOn.js";
import { toHtmlPage } from "../../src/show/toHtmlPage.js";
import { yardPage } from "../../src/show/yardPage.js";
import type { Study } from "../../src/study/Study.js";
import { footVisit } from "../footVisit.js";
import { gaugeDay, horseStay, studyOf, yard } from "../study.js";
import { demoStudy } from "../simulate/demoStudy.js";
import { elements } from "./elements.js";

/** Two yards whose names stand wherever a name can; Mover went from Xanadu to Quarry. */
function twoYards(): Study {
  const names = ["Alder", "Bryony", "Clover", "Daisy", "Elder", "Furze"];
  const visits = [...names.map((name) => `Xx${name}`), ...names.map((name) => `Qq${name}`), "Mover"].flatMap((horseId, at) =>
    ["2025-01-06", "2025-02-17", "2025-03-31"].map((visitDate, nth) =>
      footVisit({
        horseId,
        visitDate,
        thrushGrade: (at + nth) % 4,
        observerId: "Xanadu",
        note: "Xanadu",
        notExaminedReason: "at Xanadu",
      }),
    ),
  );
  const at = (yardId: string, horseId: string) => horseStay({ horseId, yardId, plannedIntervalDays: 42 });
  return studyOf({
    name: "Xanadu and Quarry",
    visits,
    horses: [
      ...names.map((name) => at("Xanadu", `Xx${name}`)),
      ...names.map((name) => at("Quarry", `Qq${name}`)),
      { ...at("Xanadu", "Mover"), leftOn: "2025-02-01" },
      { ...at("Quarry", "Mover"), joinedOn: "2025-02-01" },
    ],
    yards: [
      yard({ yardId: "Xanadu", gaugeId: "Gauge Xanadu" }),
      yard({ yardId: "Quarry", gaugeId: "Gauge Xanadu", ground: "like Xanadu" }),
    ],
    changes: [{ file: "changes.csv", line: 2, yardId: "Quarry", changedOn: "2025-02-01", what: "mats as at Xanadu" }],
    weather: Array.from({ length: 120 }, (_, day) =>
      gaugeDay({
        gaugeId: "Gauge Xanadu",
        date: new Date(Date.UTC(2024, 11, 1) + day * 86_400_000).toISOString().slice(0, 10),
        rainMm: 2,
      }),
    ),
    report: {
      ...studyOf().report,
      inputs: [
        { file: "visits-Xanadu.csv", kind: "visits", bytes: 1, sha256: "0".repeat(64), rowsRead: 1, accepted: 1, setAside: 0 },
      ],
      issues: [
        {
          file: "visits-Xanadu.csv",
          line: 2,
          row: 1,
          column: null,
          value: "Xanadu",
          code: "a",
          severity: "warning",
          message: "Xanadu",
          hint: "Xanadu",
        },
      ],
    },
  });
}

const made = (study: Study, yardId: string) => toHtmlPage(yardPage(focusOn(study, { yardId }), yardId, "2025-04-01"));

test("no other yard, none of its horses, no free text, study or file name: nowhere in the page, charts and foot included", async () => {
  const html = await made(twoYards(), "Quarry");
  expect(html).toContain("QqAlder");
  expect(html).toContain("Mover");
  expect(html).not.toMatch(/Xanadu|Xx/);
});

test("of a horse that came, only what was recorded here; at the yard it left it is no longer waited for", async () => {
  const here = focusOn(twoYards(), { yardId: "Quarry" });
  expect(here.visits.filter(({ horseId }) => horseId === "Mover").map(({ visitDate }) => visitDate)).toEqual([
    "2025-02-17",
    "2025-03-31",
  ]);
  const there = await made(twoYards(), "Xanadu");
  const rows = elements(there).filter(({ name, attributes }) => name === "th" && attributes.get("scope") === "row");
  expect(rows.map(({ text }) => text)).not.toContain("Mover");
});

test("the demo: the page of each yard names none of the others", async () => {
  const study = await demoStudy();
  const yards = study.yards.map(({ yardId }) => yardId);
  const horsesOf = (yardId: string) =>
    new Set(study.horses.filter((stay) => stay.yardId === yardId).map(({ horseId }) => horseId));
  for (const yardId of yards.slice(0, 3)) {
    const words = new Set(
      elements(await made(study, yardId)).flatMap(
        ({ text, attributes }) => [text, ...attributes.values()].join(" ").match(/[\p{L}\p{N}]+/gu) ?? [],
      ),
    );
    const own = horsesOf(yardId);
    const others = yards.filter((other) => other !== yardId);
    // Some horses have names that are words of the trade or the page.
    const horses = others.flatMap((other) => [...horsesOf(other)]).filter((horse) => !own.has(horse));
    expect([...others, ...horses].filter((name) => words.has(name))).toEqual([]);
  }
}, 60_000);

test("the vet's feet first; a yard that was never visited says so", async () => {
  const headings = elements(await made(twoYards(), "Quarry")).filter(({ name }) => name === "h2");
  expect(headings.map(({ text }) => text).slice(0, 3)).toEqual([
    "Read this first",
    "Questions on this page",
    "Which feet are the vet's?",
  ]);
  const empty = studyOf({ yards: [yard({ yardId: "Bare" })] });
  const html = await made(empty, "Bare");
  expect(html).toContain("No visit to this yard has been recorded yet.");
  expect(html.match(/Not enough data\./g)).toHaveLength(10);
});
