import { expect, test } from "vitest";
import { horsePage } from "../../src/show/horsePage.js";
import { toHtmlPage } from "../../src/show/toHtmlPage.js";
import { oneHorse } from "../answer/oneHorse.js";
import { elements } from "./elements.js";

const study = oneHorse();

test("findings that are the vet's come first, then all four feet", async () => {
  const html = await toHtmlPage(horsePage(study, "Bess", "2025-04-01"));
  const found = elements(html);
  expect(found.filter(({ name }) => /^h[12]$/.test(name)).map(({ text }) => text)).toEqual([
    "Bess: a history of its feet",
    "Read this first",
    "What was recorded that is the vet's?",
    "What has been recorded of all four feet of this horse?",
    "What did the feet measure?",
    "How were the visits kept, and when is the next?",
  ]);
  const drawing = found.find(({ name, attributes }) => name === "svg" && attributes.get("role") === "img");
  expect(drawing).toBeDefined();
  expect(found.filter(({ name }) => name === "table").length).toBeGreaterThanOrEqual(4);
});

test("notes stay off the page", async () => {
  const visits = study.visits.map((visit) => ({ ...visit, note: "Owner Jane Example rang twice" }));
  expect(await toHtmlPage(horsePage({ ...study, visits }, "Bess", "2025-04-01"))).not.toContain("Jane Example");
});

test("the more there is to say of each visit, the fewer are listed", () => {
  const many = (words: string) => ({
    ...study,
    visits: Array.from({ length: 20 }, (_, at) => ({
      ...study.visits[0]!,
      visitDate: `2024-${String((at % 12) + 1).padStart(2, "0")}-${at < 12 ? "01" : "15"}`,
      examined: false,
      notExaminedReason: words,
    })),
  });
  const listed = (words: string) => {
    const [, history] = horsePage(many(words), "Bess", "2025-04-01").answers;
    return history?.kind === "answer" ? history.tables[0]!.rows.length : 0;
  };
  expect(listed("no")).toBe(10);
  expect(listed("would not stand for the near hind, and the yard was busy")).toBeLessThan(6);
});
