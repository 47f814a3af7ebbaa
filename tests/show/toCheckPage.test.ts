import { expect, test } from "vitest";
import { toCheckPage } from "../../src/show/toCheckPage.js";
import { studyFrom } from "../read/folder.js";
import { elements } from "./elements.js";

const texts = (html: string, name: string) => elements(html).flatMap((each) => (each.name === name ? [each.text] : []));
const made = { on: "2025-07-01", program: "underfoot 0.0.0" };

const page = async (rows: readonly string[], setAsideFiles: readonly string[] = [], name = "Two yards") => {
  const study = await studyFrom({
    "study.json": JSON.stringify({ name, gaugeDay: "ends_on_date" }),
    "visits.csv": ["visit_date,horse_id,foot,thrush_grade,hoof_width_mm", ...rows].join("\n"),
  });
  return toCheckPage({ study: study.name, report: study.report, setAsideFiles, ...made });
};

test("where the records went, then each problem of each column with its examples and what to do, the dearest first", async () => {
  const html = await page([
    "2025-03-01,Ash,LF,1,175",
    ...Array.from({ length: 12 }, (_, index) => `2025-03-${String(index + 2).padStart(2, "0")},Ash,LF,7,120`),
    "x,Ash,LF,1,120",
  ]);
  expect(html).toContain("1 row set aside of 14 rows; 12 cells left empty.");
  const headings = texts(html, "h3").filter((text) => !text.includes("File absent"));
  expect(headings).toEqual([
    "Bad date: visits.csv, column visit_date",
    "Out of range: visits.csv, column thrush_grade",
    "Unusual value: visits.csv, column hoof_width_mm",
  ]);
  expect(texts(html, "tr").some((row) => /^7"7" cannot be right.*3, 4, 5, 6, 7, 8, 9, 10 and 4 more$/.test(row))).toBe(true);
  expect(html).toContain("12 cells left empty.");
  expect(texts(html, "tr").some((row) => /^x"x" is not a calendar day\.15$/.test(row))).toBe(true);
  expect(html).toContain("<strong>To do:</strong> Check the value and its unit.");
  expect(texts(html, "tr").some((row) => /Feet at visits\s*14\s*13\s*1$/.test(row))).toBe(true);
});

test("whatever stands in a cell or a name is text, and nothing can be loaded or run", async () => {
  const evil = '<img src=x onerror="a()">';
  const html = await page([`2025-03-01,Ash,${evil.replaceAll('"', "'")},1,`], ["<b>.csv"], evil);
  expect(html).not.toMatch(/<img|<b>|<script/);
  expect(html).toContain("&lt;img src=x onerror=&#39;a()&#39;&gt;");
  expect(html).toContain("default-src 'none'");
  expect(html).toContain("&lt;b&gt;.csv");
});

test("how a mapped file was read is told", async () => {
  const files = { visits: [{ file: "v.csv", delimiter: ";", columns: { hoof_width_mm: { header: "w", unit: "in" } } }] };
  const study = await studyFrom({
    "study.json": JSON.stringify({ name: "T", files }),
    "v.csv": "visit_date;horse_id;foot;w\n2025-03-01;Ash;LF;5\n",
  });
  const html = toCheckPage({ study: study.name, report: study.report, setAsideFiles: [], ...made });
  expect(html).toContain("v.csv: parted by semicolon, utf-8");
  expect(texts(html, "tr").some((row) => /hoof_width_mm\s*w\s*in, times 25\.4$/.test(row))).toBe(true);
});
