import { describe, expect, test } from "vitest";
import { intervalKeepingChart } from "../../src/chart/intervalKeepingChart.js";
import { pageStyle } from "../../src/show/html/pageStyle.js";
import type { Page } from "../../src/show/Page.js";
import { toHtmlPage } from "../../src/show/toHtmlPage.js";
import { defaultSettings } from "../../src/study/defaultSettings.js";
import { keepingOptions, yards } from "../chart/charts.js";
import { elements } from "./elements.js";
import { answer, longTable, nastyName, notEnough, report, table } from "./shown.js";

const keeping = intervalKeepingChart(yards, keepingOptions);
const page: Page = {
  title: "The season at three yards",
  intro: ["Invented records."],
  cautions: ["This page is not a diagnosis."],
  answers: [answer, { ...answer, id: "late", charts: [keeping, keeping], tables: [keeping.table] }, notEnough],
  report,
  made: { on: "2025-12-01", study: "Three yards", program: "underfoot 0.1.0", settings: defaultSettings },
};
const html = await toHtmlPage(page);
const all = elements(html);
const tags = (name: string) => all.filter((element) => element.name === name);

test("the tags are closed in the order they were opened, ids are unique, references are met", () => {
  const ids = all.flatMap((element) => element.attributes.get("id") ?? []);
  expect(new Set(ids).size).toBe(ids.length);
  for (const element of all) {
    for (const id of element.attributes.get("aria-labelledby")?.split(" ") ?? []) expect(ids).toContain(id);
    const link = element.attributes.get("href");
    if (link !== undefined) expect(ids).toContain(link.replace(/^#/, ""));
    for (const [, used] of (element.attributes.get("clip-path") ?? "").matchAll(/url\(#([^)]+)\)/g)) expect(ids).toContain(used);
  }
});

test("the same page gives the same text", async () => {
  expect(await toHtmlPage(page)).toBe(html);
});

test("nothing is loaded and nothing can run", () => {
  const loading = ["script", "link", "img", "iframe", "object", "embed", "base", "form", "image", "use", "foreignObject"];
  expect(all.filter((element) => loading.includes(element.name))).toEqual([]);
  const attributes = all.flatMap((element) => [...element.attributes]);
  expect(attributes.filter(([name]) => /^on|^src$|^srcset$|^action$/.test(name))).toEqual([]);
  const addresses = attributes.filter(
    ([name, value]) => !name.startsWith("xmlns") && /^\s*(?:https?:|\/\/|data:|javascript:)/.test(value),
  );
  expect(addresses).toEqual([]);
  expect(html).not.toMatch(/@import|url\((?!#)/);
  expect(tags("meta").map((meta) => meta.attributes.get("content"))).toContainEqual(expect.stringMatching(/^default-src 'none'/));
});

test("it has a language, a viewport, a title, and headings that skip no level", () => {
  expect(tags("html")[0]!.attributes.get("lang")).toBe("en-GB");
  expect(tags("meta").map((meta) => meta.attributes.get("name"))).toContain("viewport");
  expect(tags("title")[0]!.text).toBe(page.title);
  const levels = all.flatMap(({ name }) => (/^h[1-6]$/.test(name) ? [Number(name.slice(1))] : []));
  expect(levels[0]).toBe(1);
  expect(levels.filter((level) => level === 1)).toHaveLength(1);
  for (const [index, level] of levels.entries()) expect(level - (levels[index - 1] ?? 0)).toBeLessThanOrEqual(1);
  expect(tags("main")).toHaveLength(1);
});

test("cautions come before the first answer; each answer is a section with its question, and in the contents", () => {
  expect(html.indexOf("not a diagnosis")).toBeLessThan(html.indexOf("<main>"));
  expect(tags("h2").map((heading) => heading.text)).toEqual([
    "Read this first",
    "Questions on this page",
    ...page.answers.map(({ question }) => question),
    "What was read",
    "What the answers rest on",
  ]);
  expect(html).toContain("<strong>Not enough data.</strong> Only one yard changed its bedding.");
});

test("each drawing is an image with a name and a description, its reading below, its numbers behind it", () => {
  const drawings = tags("svg");
  expect(drawings).toHaveLength(3);
  for (const drawing of drawings) expect(drawing.attributes.get("role")).toBe("img");
  expect(tags("desc").map((desc) => desc.text)).toEqual([answer.charts[0]!.reading, keeping.reading, keeping.reading]);
  expect(tags("figcaption").map((caption) => caption.text)).toEqual(tags("desc").map((desc) => desc.text));
  // The table of the second answer is the one behind its charts; it is not printed a second time.
  expect(html.match(/The numbers in this chart/g)).toHaveLength(1);
  expect(tags("caption").filter((caption) => caption.text === keeping.table.caption)).toHaveLength(1);
});

test("files, faults and settings are there to rebuild the numbers; faulty cells are not", () => {
  for (const text of ["visits.csv", "0123456789ab", "date not real", "Three yards", "underfoot 0.1.0", "2025-12-01"])
    expect(html).toContain(text);
});

describe("words of the reader are text, never markup", () => {
  const nasty = {
    ...table,
    caption: nastyName,
    columns: [{ name: "horse", title: nastyName }],
    rows: [{ horse: nastyName }],
    greyed: [{ row: 0, reason: nastyName }],
  };
  const chart = intervalKeepingChart([{ ...yards[0]!, yardId: nastyName }], { ...keepingOptions, title: nastyName });
  const everywhere: Page = {
    title: nastyName,
    intro: [nastyName],
    cautions: [nastyName],
    answers: [
      {
        ...answer,
        question: nastyName,
        sentence: nastyName,
        tables: [nasty],
        charts: [chart],
        cautions: [nastyName],
        method: { ...answer.method, unit: nastyName, text: nastyName },
      },
      { ...notEnough, question: nastyName, reason: nastyName },
    ],
    report: {
      ...report,
      inputs: [{ ...report.inputs[0]!, file: nastyName }],
      counts: [{ ...report.counts[0]!, column: nastyName }],
    },
    made: { on: nastyName, study: nastyName, program: nastyName, settings: { ...defaultSettings, asOf: nastyName } },
  };

  test("the page has the same elements as with harmless words", async () => {
    const harmless = JSON.parse(JSON.stringify(everywhere).replaceAll(JSON.stringify(nastyName).slice(1, -1), "Bess")) as Page;
    const names = async (each: Page) =>
      elements(await toHtmlPage(each)).map(({ name, attributes }) => [name, ...attributes.keys()].join(" "));
    const [bad, good] = [await names(everywhere), await names(harmless)];
    // The longer name breaks over more lines of the drawing.
    const outsideText = (list: readonly string[]) => list.filter((element) => !/^(text|tspan|g) /.test(`${element} `));
    expect(outsideText(bad)).toEqual(outsideText(good));
  });

  test("and shows the name as it is", async () => {
    expect(elements(await toHtmlPage(everywhere)).find(({ name }) => name === "h1")!.text).toBe(nastyName);
  });
});

test("a long table is cut with a count", async () => {
  const long = await toHtmlPage({ ...page, answers: [{ ...answer, charts: [], tables: [longTable(700)] }] });
  expect(long).toContain("The first 500 of 700 rows.");
});

test("an empty page stands too", async () => {
  const bare = await toHtmlPage({ ...page, intro: [], cautions: [], answers: [], report: null });
  expect(elements(bare).filter(({ name }) => name === "nav" || name === "aside")).toEqual([]);
  expect(bare).toContain("What the answers rest on");
});

// Relative luminance and contrast ratio as WCAG 2.2 defines them; success criterion 1.4.3 asks 4.5 of text.
describe("contrast", () => {
  type Scheme = ReadonlyMap<string, string>;
  const schemes = [...pageStyle.matchAll(/:root \{([^}]*--paper[^}]*)\}/g)].map(
    ([, block = ""]): Scheme =>
      new Map([...block.matchAll(/--([a-z-]+): (#[0-9a-f]{6})/g)].map(([, name = "", value = ""]) => [name, value])),
  );
  const luminance = (colour: string) => {
    const [red, green, blue] = [1, 3, 5].map((at) => {
      const channel = parseInt(colour.slice(at, at + 2), 16) / 255;
      return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
  };
  const contrast = (a: string, b: string) => {
    const [dark, light] = [luminance(a), luminance(b)].sort((x, y) => x - y);
    return (light! + 0.05) / (dark! + 0.05);
  };
  const over = (ink: string, paper: string, opacity: number) =>
    `#${[1, 3, 5]
      .map((at) =>
        Math.round(opacity * parseInt(ink.slice(at, at + 2), 16) + (1 - opacity) * parseInt(paper.slice(at, at + 2), 16))
          .toString(16)
          .padStart(2, "0"),
      )
      .join("")}`;

  test("the formula gives the published extremes", () => {
    expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 10);
    expect(contrast("#777777", "#ffffff")).toBeCloseTo(4.48, 2);
  });

  test("text reads on every ground, light, dark and in print", () => {
    expect(schemes).toHaveLength(3);
    for (const scheme of schemes) {
      const colour = (name: string) => scheme.get(name)!;
      for (const ink of ["ink", "quiet", "accent"])
        for (const ground of ["paper", "stripe", "warn-paper"])
          expect(contrast(colour(ink), colour(ground))).toBeGreaterThanOrEqual(4.5);
      expect(contrast(over(colour("ink"), colour("paper"), 0.7), colour("paper"))).toBeGreaterThanOrEqual(4.5);
    }
  });
});
