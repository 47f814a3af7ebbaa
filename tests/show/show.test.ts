import { createRequire } from "node:module";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import type { MimeBundle } from "../../src/show/notebook/MimeBundle.js";
import { show } from "../../src/show/show.js";
import { toFrame } from "../../src/show/toFrame.js";
import { StudyError } from "../../src/study/StudyError.js";
import { studyOf } from "../study.js";
import { answer, chart, longTable, nastyName, notEnough, report, table } from "./shown.js";

// The kernel's own modules, tslab 1.0.22, as a cell finds them; only the wire to the front end is replaced.
const load = createRequire(import.meta.url);
const messaging = load("tslab/dist/jupyter.js") as { lastWriteDisplayData: unknown };
const { display } = load("tslab") as { display: { raw: (mime: string, data: unknown) => void } };

let printed = "";
beforeEach(() => {
  printed = "";
  vi.spyOn(process.stdout, "write").mockImplementation((text) => {
    printed += String(text);
    return true;
  });
});
afterEach(() => {
  messaging.lastWriteDisplayData = null;
});

describe("in a cell", () => {
  let sent: (MimeBundle & { readonly transient: object })[] = [];
  beforeEach(() => {
    sent = [];
    messaging.lastWriteDisplayData = (bundle: MimeBundle & { transient: object }, update: boolean) => {
      expect(update).toBe(false);
      sent.push(bundle);
    };
  });
  const mimes = () => sent.map(({ data }) => Object.keys(data));

  test("a chart is one message: drawing as an object, picture with its size, words; no HTML", async () => {
    await show(chart);
    expect(mimes()).toEqual([["application/vnd.vegalite.v5+json", "image/png", "text/plain"]]);
    const { data, metadata } = sent[0]!;
    expect(data["application/vnd.vegalite.v5+json"]).toEqual(chart.spec);
    const png = Buffer.from(data["image/png"] as string, "base64");
    const { width, height } = metadata["image/png"] as { width: number; height: number };
    // IHDR of the PNG: twice as fine as shown.
    expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([2 * width, 2 * height]);
    expect(data["text/plain"]).toBe(`${chart.title}\n${chart.reading}`);
    expect(printed).toBe("");
  });

  test("an answer is its question and sentence, its charts, then tables, cautions and method", async () => {
    await show(answer);
    expect(mimes().map(([first]) => first)).toEqual(["text/html", "application/vnd.vegalite.v5+json", "text/html"]);
    const [before, , after] = sent.map(({ data }) => data["text/html"] as string);
    expect(before).toContain("<h3>When do the frogs go off?</h3>\n<p>Most in December.</p>");
    const places = ["<table>", "Cautions", "Method."].map((part) => after!.indexOf(part));
    expect(places).toEqual([0, ...places.slice(1).sort((a, b) => a - b)]);
    expect(sent[2]!.data["text/plain"]).toContain("Captain");
  });

  test("items come in the order given, each with plain text beside", async () => {
    await show("**first**", notEnough, studyOf({ name: "Six yards", report }), report);
    expect(mimes()).toEqual([
      ["text/markdown", "text/plain"],
      ["text/html", "text/plain"],
      ["text/html", "text/plain"],
      ["text/html", "text/plain"],
    ]);
    expect(sent[0]!.data["text/markdown"]).toBe("**first**");
    expect(sent[1]!.data["text/html"]).toContain("Not enough data. Only one yard changed its bedding.");
    expect(sent[2]!.data["text/html"]).toContain("Six yards: what was read");
    expect(sent[3]!.data["text/html"]).toContain("0123456789ab<");
  });

  test("a table has scopes, numbers flush right, a dash for missing, starred grey rows", async () => {
    await show(table);
    const html = sent[0]!.data["text/html"] as string;
    expect(html).toContain('<caption style="text-align:left"><span>Caption of the table</span></caption>');
    expect(html).toContain('<th scope="col" style="text-align:right">Width (mm)</th>');
    expect(html).toMatch(/<th scope="row"[^>]*>Captain<\/th><td style="text-align:right[^>]*>127\.5<\/td>/);
    expect(html).toMatch(/<tr class="greyed"[^>]*><th scope="row"[^>]*>Bess \*<\/th><td[^>]*>–<\/td><td[^>]*>&lt;1%<\/td>/);
    expect(html).toContain("* fewer than 3 visits");
    // Colours would be wrong in one theme or the other.
    expect(html).not.toMatch(/color|background/);
  });

  test("a long table is cut with a count", async () => {
    await show(longTable(134));
    const html = sent[0]!.data["text/html"] as string;
    expect(html.match(/<tr/g)).toHaveLength(51);
    expect(html).toContain("The first 50 of 134 rows.");
  });

  test("a horse's name is text", async () => {
    await show({ ...table, caption: nastyName, rows: [{ ...table.rows[0]!, horse: nastyName }] });
    const html = sent[0]!.data["text/html"] as string;
    expect(html).not.toMatch(/<(script|img|!--)/);
    expect(html.match(/&lt;script&gt;alert\(&quot;x&quot;\)/g)).toHaveLength(2);
  });

  test("rows become a table; of 10,000 the first 50 are shown, with the count", async () => {
    await show(Array.from({ length: 10_000 }, (_, index) => ({ horseId: `horse ${index}`, thrushGrade: index % 4 })));
    const html = sent[0]!.data["text/html"] as string;
    expect(html.match(/<tr/g)).toHaveLength(51);
    expect(html).toContain("The first 50 of 10000 rows.");
    expect(JSON.stringify(sent).length).toBeLessThan(30_000);
  });

  test("a data frame becomes a table, its NaN missing", async () => {
    await show(
      await toFrame([
        { horse: "Fern", angle: 50.5 },
        { horse: "Moss", angle: null },
      ]),
    );
    const html = sent[0]!.data["text/html"] as string;
    expect(html).toContain("Data frame, 2 rows and 2 columns");
    expect(html).toMatch(/Fern<\/th><td[^>]*>50\.5<\/td>/);
    expect(html).toMatch(/Moss<\/th><td[^>]*>–<\/td>/);
  });

  test("what is still on its way is waited for", async () => {
    await show(Promise.resolve(notEnough));
    expect(sent[0]!.data["text/html"]).toContain("Not enough data.");
  });

  test.each([
    [
      "a function",
      function thrushNow() {
        return notEnough;
      },
      "the function thrushNow",
      "Call it: thrushNow(study).",
    ],
    ["a number", 3, "was given 3", "Give an answer"],
    ["nothing", undefined, "was given undefined", "Give an answer"],
    ["a list of answers", [notEnough, answer], "a list of 2 things to show", "await show(...list)"],
    ["a list of texts", ["Fern"], "a list that does not hold rows", "console.log(list)"],
    ["one record", { horseId: "Fern" }, "an object with horseId", "await show([row])"],
  ])("%s is refused with what to do", async (_, item, message, hint) => {
    const refusal: unknown = await show(item as never).catch((fault: unknown) => fault);
    expect(refusal).toBeInstanceOf(StudyError);
    expect((refusal as StudyError).message).toContain(message);
    expect((refusal as StudyError).hint).toContain(hint);
    expect(sent).toEqual([]);
  });

  test("an object that knows how it is displayed is asked", async () => {
    await show({ [Symbol.for("Jupyter.display")]: () => ({ "text/html": "<b>mine</b>", "text/plain": "mine" }) } as never);
    expect(sent[0]!.data).toEqual({ "text/html": "<b>mine</b>", "text/plain": "mine" });
  });
});

describe("where the kernel has changed", () => {
  test("the richest single form is sent", async () => {
    messaging.lastWriteDisplayData = undefined;
    const raw = vi.spyOn(display, "raw").mockImplementation(() => undefined);
    await show(chart, table, "words");
    expect(raw.mock.calls.map(([mime]) => mime)).toEqual(["image/png", "text/html", "text/markdown"]);
    expect(printed).toBe("");
  });
});

describe("outside a notebook", () => {
  test("text is printed, the same that toText makes", async () => {
    await show(notEnough, table);
    expect(printed).toContain("Not enough data. Only one yard changed its bedding.");
    expect(printed).toMatch(/Captain +127\.5/);
  });
});
