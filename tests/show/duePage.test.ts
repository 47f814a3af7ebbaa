import { expect, test } from "vitest";
import { duePage } from "../../src/show/duePage.js";
import { toHtmlPage } from "../../src/show/toHtmlPage.js";
import { dueHorses } from "../answer/dueHorses.js";
import { footVisit } from "../footVisit.js";
import { elements } from "./elements.js";

const study = dueHorses();

test("feet that are the vet's come before the list; of horses that left nothing is said", async () => {
  const visits = [
    ...study.visits,
    footVisit({ horseId: "Cob", visitDate: "2025-02-20", reason: "lame", foot: "RH" }),
    footVisit({ horseId: "Ivy", visitDate: "2025-01-20", reason: "lame", foot: "RH" }),
    // After the day of the list.
    footVisit({ horseId: "Dun", visitDate: "2025-03-02", reason: "lame", foot: "RH" }),
  ];
  const html = await toHtmlPage(duePage({ ...study, visits }, "2025-03-01"));
  const found = elements(html);
  const headings = found.filter(({ name }) => /^h[12]$/.test(name)).map(({ text }) => text);
  expect(headings).toEqual([
    "Who is due: 1 March 2025",
    "Read this first",
    "Which feet are the vet's?",
    "Who is due this week, who next week, and who is over?",
  ]);
  const sentences = found.filter(({ attributes }) => attributes.get("class") === "sentence").map(({ text }) => text);
  expect(sentences[0]).toContain("At their last visit 1 horse had a finding recorded that is the vet's: Cob.");
  expect(html).not.toContain("Ivy");
});

test("without a finding it says so, and that this is no sign of soundness", async () => {
  const html = await toHtmlPage(duePage(study, "2025-03-01"));
  expect(html).toContain("No finding of a horse&#39;s last visit is marked as the vet&#39;s.");
  expect(html).toContain("a foot that is not on it is not thereby sound");
});

test("set closely: the settings that matter stand in a line at the foot", async () => {
  const html = await toHtmlPage(duePage(study, "2025-03-01"));
  expect(html).toContain('<body class="compact">');
  expect(elements(html).find(({ name }) => name === "footer")!.text).toMatch(
    /^An interval counts as kept within: 7 days of its date, either way\. A gap is loss of contact, not lateness, after: 400 days\. The review is made as of: 2025-03-01\./,
  );
});
